import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { qnhOf } from '../../flight/air/air.ts';
import { standardGravity } from '../../flight/air/constants.ts';
import { crosswind, headwind } from '../../flight/air/wind.ts';
import { approaches } from '../../flight/approaches/approaches.ts';
import type { Aircraft, BestGlide } from '../../flight/terms/aircraft.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { formatAngle, formatDirection } from '../../units/angle-text.ts';
import { numberText } from '../../units/rounding.ts';
import { solvedName } from '../../words/approaches/solved-words.ts';
import {
  formatDistance,
  formatHeight,
  formatLowHeight,
  formatMass,
  formatPressure,
  formatRatio,
  formatSpeed,
  formatTemperature,
  formatTime,
} from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatMostAngle, formatMostSpeed, formatSafeDistance } from '../../words/figures/safe-rounding.ts';
import { formatKeyHeight } from '../../words/keys/key-height.ts';
import { keyNames } from '../../words/keys/key-names.ts';
import { veerWords } from '../../words/winds/veer-words.ts';
import { gradientSentence, howSized, leftOutLines, type Sized } from './left-out.ts';
import { profileWords } from './setting.ts';
import { type Chapter, figure, otherGlides, workedChain } from './worked-chain.ts';

/**
 * The last page of a packet: inputs with their sources, one chain worked through with this plan's numbers, the
 * published references and what the model leaves out; enough to redo a figure with a calculator.
 */
export function workings(sized: Sized, units: PageUnits): Element {
  const { plan } = sized;
  return h('section', { class: 'workings', ariaLabelledBy: 'workings' }, [
    h('h2', { id: 'workings' }, 'How the figures were worked out'),
    modelInShort(),
    h('h3', 'What went in'),
    ...inputs(plan, units),
    ...workedPlan(sized, units),
    ...modelNotes(units, { sized }),
  ]);
}

/** How the figures come about, in a paragraph. */
export function modelInShort(): Element {
  return h('p', [
    'The aircraft is flown through the wind on paper: small steps of the equations below, in metres and seconds, ',
    'until the wheels meet the ground. One number of the approach is left open and found so that they meet it at the spot. ',
    'Nothing is rounded on the way; what is printed is rounded last.',
  ]);
}

/** One plan: the wind it was flown in, a chain to redo, and what the flight gave. */
export function workedPlan(sized: Sized, units: PageUnits): Element[] {
  const { plan } = sized;
  const glides = otherGlides(plan);
  const gradient = gradientSentence(sized, units);
  return [
    windTable(plan, units),
    h('h3', 'One chain, worked through'),
    h('p', [
      'With a calculator each line gives the next, to the last figure, or one or two beside it. ',
      'E is the best glide ratio, u the airspeed over that of best glide, both of the power setting; φ the bank, γ the glide angle, ',
      `g = ${standardGravity} m/s².`,
    ]),
    chainTable(workedChain(plan)),
    table('The glides of this approach', glides.head, glides.rows, [1, 2, 3]),
    h('h3', 'What the flight gave'),
    h('p', solvedSentence(plan)),
    ...(gradient === undefined ? [] : [h('p', gradient)]),
    keyTable(plan, units),
  ];
}

/** What the model is taken from, and what it leaves out of these plans: with sizes for the one that has them. */
export function modelNotes(
  units: PageUnits,
  { level = 'h3', sized, plans }: { level?: 'h2' | 'h3'; sized?: Sized; plans?: readonly Plan[] },
): Element[] {
  return [
    h(level, 'Published references'),
    h(
      'ul',
      references.map(({ name, use }) => h('li', [h('i', name), `: ${use}`])),
    ),
    h(level, 'What is not in it'),
    h('p', sized ? howSized : `${howSized} Each plan worked out below has its own.`),
    h(
      'ul',
      leftOutLines(units, sized, plans).map((line) => h('li', line)),
    ),
  ];
}

const references = [
  {
    name: 'US Standard Atmosphere, 1976 (the same as ISO 2533 at these heights)',
    use: 'pressure, temperature and density by height; dry air; above the field the temperature falls 6.5 °C a kilometre from its own.',
  },
  {
    name: "FAA-H-8083-25, Pilot's Handbook of Aeronautical Knowledge, chapter Aerodynamics of Flight",
    use: 'load factor 1/cos φ and stall speed times √n in a turn, rate and radius of turn, forces in a glide; induced drag less by 47.6 %, 23.5 % and 1.4 % with the wing a tenth, a quarter and one span up, and a smooth curve through these.',
  },
  {
    name: 'FAA-H-8083-3, Airplane Flying Handbook, chapter Approaches and Landings',
    use: 'the power-off approaches, their key positions, round-out and aiming point.',
  },
  {
    name: 'FAA-H-8083-25, chapter Aircraft Performance, and Regulation (EU) 965/2012, CAT.POL.A.330(c)',
    use: 'the landing roll goes with the square of the groundspeed at the touchdown; half of a headwind counts, one and a half times a tailwind. For its surface it is not changed.',
  },
  {
    name: 'Glide polar',
    use: 'drag as a parasite part growing with the square of the airspeed and an induced part falling with it, the common parabolic form, set by the best glide of the aircraft table; the glide angle is solved exactly, not as a small angle.',
  },
  {
    name: 'Wind by height',
    use: 'the power law above 2 m, from the reported wind at 10 m (WMO-No. 8); its exponent is an input.',
  },
  {
    name: 'Etkin, Dynamics of Atmospheric Flight, 1972, chapter 13 (from memory)',
    use: 'flight in a wind that changes: the airspeed that it takes is paid for in height, V · dW/dh / g of the sink.',
  },
];

function table(
  caption: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
  numbers: readonly number[],
): Element {
  const cell = (name: 'th' | 'td', column: number, content: string, scope?: string): Element =>
    h(name, { ...(scope && { scope }), ...(numbers.includes(column) && { class: 'number' }) }, content);
  return h('table', [
    h('caption', caption),
    h('thead', [
      h(
        'tr',
        head.map((content, column) => cell('th', column, content, 'col')),
      ),
    ]),
    h(
      'tbody',
      rows.map((row) =>
        h(
          'tr',
          row.map((content, column) =>
            column === 0 ? cell('th', 0, content, 'row') : cell('td', column, content),
          ),
        ),
      ),
    ),
  ]);
}

/** What went in, with its sources; `said` keeps what was printed last, so that a book does not repeat it at once. */
export function inputs(plan: Plan, units: PageUnits, said = new Map<number, string>()): Element[] {
  const { aircraft, airfield, runway, air, flown } = plan;
  const best = ({ speed, ratio }: BestGlide) => `${formatRatio(ratio)} at ${formatSpeed(speed, units)}`;
  const fromAircraft: [string, string][] = [
    ['Best glide, engine idling', best(aircraft.glide.idle)],
    ...optional('Best glide, engine stopped', aircraft.glide.stopped && best(aircraft.glide.stopped)),
    ...optional('Steep approach', aircraft.steepApproach && best(aircraft.steepApproach)),
    ['Stall, touchdown, approach', speeds(aircraft, units)],
    ['Speeds hold at', formatMass(aircraft.mass.reference)],
    [
      'Span; wing above the wheels',
      `${figure(aircraft.wing.span, 3)} m; ${figure(aircraft.wing.aboveWheels, 3)} m`,
    ],
    [
      'Bank planned, limit; rate of roll',
      `${formatAngle(aircraft.turns.bank)}, ${formatMostAngle(aircraft.turns.limit)}; ${formatAngle(aircraft.turns.rollRate)} a second`,
    ],
    [
      'Round-out from, load factor',
      `${formatLowHeight(aircraft.roundOut.height, units)}, ${numberText(aircraft.roundOut.loadFactor, 0.01)}`,
    ],
    [
      'Landing roll as given, in a calm and standard air at sea level',
      `${formatSafeDistance(aircraft.landingRoll, 'up', units)} at ${formatMass(aircraft.mass.reference)}`,
    ],
    ...optional('Mass, least and most', massLimits(aircraft)),
    [
      'Limits: wind, crosswind',
      `${formatMostSpeed(aircraft.limits.wind, units)}, ${formatMostSpeed(aircraft.limits.crosswind, units)}`,
    ],
    ...optional(
      'Limit: tailwind',
      aircraft.limits.tailwind === undefined ? undefined : formatMostSpeed(aircraft.limits.tailwind, units),
    ),
  ];
  const fromAirfield: [string, string][] = [
    ['Elevation', formatHeight(airfield.elevation, units)],
    ['Runway; direction true', `${runway.name}, ${runway.surface}; ${formatDirection(runway.heading)}`],
    ['Runway length, width', `${figure(runway.length)} m, ${figure(runway.width)} m`],
    ['Spot, from the landing end', `${figure(runway.spot)} m`],
    ['Wind by height: exponent α', figure(airfield.windExponent, 3)],
    ...optional('Wind by height: turns', airfield.windVeer ? veerWords(airfield.windVeer, units) : undefined),
  ];
  const ofTheDay: [string, string][] = [
    ['Mass flown', formatMass(flown.mass)],
    ['Bank of the turns', formatAngle(flown.bank)],
    [
      `Height at the ${keyNames[plan.keys[0]!.id].toLowerCase()}`,
      formatKeyHeight({ id: plan.keys[0]!.id, height: flown.height }, plan.cautions, units),
    ],
    ...(approaches[plan.approach].startsAt === 'downwind-key'
      ? optional('Downwind leg, from the centreline', formatDistance(flown.spacing, units))
      : []),
    ['Temperature, QNH', `${formatTemperature(air.temperature)}, ${formatPressure(qnhOf(air))}`],
  ];
  const group = (at: number, heading: string, source: string, entries: readonly [string, string][]) => {
    const all = JSON.stringify([heading, source, entries]);
    if (said.get(at) === all)
      return [h('p', { class: 'input-source' }, `${heading.replace(/\.$/, '')}: the same as before.`)];
    said.set(at, all);
    return [
      h('h4', heading),
      h('p', { class: 'input-source' }, source),
      h(
        'dl',
        { class: 'inputs' },
        entries.map(([what, value]) => h('div', [h('dt', what), h('dd', value)])),
      ),
    ];
  };
  return [
    ...group(1, `Aircraft: ${aircraft.name}.`, aircraft.source, fromAircraft),
    ...group(2, `Airfield: ${airfield.name}.`, airfield.source, fromAirfield),
    ...group(3, 'Of the day.', 'Chosen for these pages, or standard where nothing was given.', ofTheDay),
  ];
}

function optional(what: string, value: string | undefined): [string, string][] {
  return value === undefined ? [] : [[what, value]];
}

function massLimits({ mass: { least, most } }: Aircraft): string | undefined {
  if (least === undefined && most === undefined) return undefined;
  const said = (mass: number | undefined) => (mass === undefined ? 'none given' : `${figure(mass)} kg`);
  return `${said(least)}, ${said(most)}`;
}

function speeds({ speeds: { stall, touchdown, approach } }: Aircraft, units: PageUnits): string {
  return [stall, touchdown, approach].map((speed) => formatSpeed(speed, units)).join(', ');
}

function windTable(plan: Plan, units: PageUnits): Element {
  const { wind, runway } = plan;
  return table(
    `Wind as flown: ${profileWords(plan, units)}`,
    [
      'Height above the field',
      'From, true',
      'Speed',
      'Against the landing direction (− with it)',
      'From the right (− left)',
    ],
    wind.map((at) => [
      formatLowHeight(at.height, units),
      at.speed === 0 ? '–' : formatDirection(at.from),
      formatSpeed(at.speed, units),
      formatSpeed(headwind(at, runway.heading), units),
      formatSpeed(crosswind(at, runway.heading), units),
    ]),
    [0, 1, 2, 3, 4],
  );
}

/** `(a / b)^α` with the exponent raised. */
function raised(formula: string): (string | Element)[] {
  return formula.split(/(\^[−\d.α]+)/).map((part) => (part.startsWith('^') ? h('sup', part.slice(1)) : part));
}

function chainTable(chapters: readonly Chapter[]): Element {
  const rows = (chapter: Chapter): Element[] => [
    h('tr', [h('th', { scope: 'rowgroup', colSpan: 3, class: 'chapter' }, chapter.heading)]),
    ...chapter.steps.map(({ what, working, result }) =>
      h('tr', [h('td', what), h('td', raised(working)), h('td', result)]),
    ),
  ];
  return h('table', { class: 'chain' }, [
    h('caption', { class: 'sr-only' }, 'The chain, with the numbers of this approach'),
    h('thead', [
      h(
        'tr',
        ['What', 'Working', 'Result'].map((head) => h('th', { scope: 'col' }, head)),
      ),
    ]),
    ...chapters.map((chapter) => h('tbody', rows(chapter))),
  ]);
}

function keyTable(plan: Plan, units: PageUnits): Element {
  return table(
    'Key positions as flown, from the spot',
    ['Key', 'Time', 'Along the landing direction', 'Across, right positive', 'Height', 'Height in metres'],
    plan.keys.map(({ id, time, along, across, height }) => [
      keyNames[id],
      // The glide points at the aim point; the wheels do not go there.
      id === 'aim-point' ? '–' : formatTime(time),
      `${numberText(along, 1)} m`,
      `${numberText(across, 1)} m`,
      formatKeyHeight({ id, height }, plan.cautions, units),
      `${numberText(height, 0.1)} m`,
    ]),
    [1, 2, 3, 4, 5],
  );
}

/** What the planner's names for its unknowns mean. */
function solvedSentence(plan: Plan): ElementContent[] {
  const { solved, touchdown, made } = plan;
  const value =
    solved.unit === 'deg'
      ? `${numberText((solved.value * 180) / Math.PI, 0.1)}°`
      : `${numberText(solved.value, 0.1)} m`;
  const miss = `${numberText(touchdown.along, 0.1)} m along and ${numberText(touchdown.across, 0.1)} m across from it`;
  const name = solvedName(plan);
  const text = made
    ? `The number left open was ${name}; found: ${value}. With it the wheels touch at the spot (${miss}).`
    : `The number left open was ${name}; none was found with which the wheels touch at the spot. The nearest was ${value}: they touch ${miss}.`;
  return [{ type: 'text', value: text }];
}
