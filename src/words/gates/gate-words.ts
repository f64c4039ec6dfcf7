import { eighth } from '../../flight/plan/final-band.ts';
import { mostTurnedIn } from '../../flight/plan/gates.ts';
import type { KeyId } from '../../flight/terms/key.ts';
import type { Gate, Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { formatAngle } from '../../units/angle-text.ts';
import { formatHeight, heightStep } from '../figures/format.ts';
import { lowerFirst } from '../figures/letter-case.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatLeastHeight } from '../figures/safe-rounding.ts';
import { asNear, type BandEdge, gateBand, type NoBand } from './gate-band.ts';
import { leastFinal } from './least-final.ts';

// What a band means follows from how the core finds it: its low edge is that of the shortest path which the gate
// allows, its high edge that of the longest. The words name these paths and no others.

const [turnedIn, turnedOut] = [formatAngle(mostTurnedIn), formatAngle(eighth)];

/** A plan, what it was asked for, and the units of the page. */
interface Setting {
  readonly plan: Plan;
  readonly request: PlanRequest;
  readonly units: PageUnits;
}

/** How the bands were found, in one line. */
export function bandNote({ plan, request, units }: Setting): string {
  const sound = formatLeastHeight(leastFinal(request), units);
  const from = (at: KeyId) => plan.gates.some((gate) => gate.at === at);
  const ways = [
    ...(from('downwind-key')
      ? [
          'the base turn at once, or as far past abeam as twice the spacing',
          'where two turns have no room, one',
        ]
      : []),
    ...(from('downwind-key') || from('base-key')
      ? [`base leg turned by up to ${turnedIn} in or ${turnedOut} out`]
      : []),
    `the turn to final complete by ${sound}`,
    `on final all from the best speed for this wind to ${mostDragWords(plan, sound)}`,
  ];
  return `Each band was found by flying, from the planned place of the key and every height: ${ways.join('; ')}.`;
}

/** What to do below the band. */
export function belowWords(gate: Gate, setting: Setting): string {
  const band = gateBand(gate, setting.units);
  const instead = insteadBelow(gate.at, setting.plan);
  if (band.none !== undefined) return `Lower than the plan: ${lowerFirst(instead)}.`;
  if (band.low !== 'open') return `${instead}: ${fallsShort(gate.at, setting)}.`;
  return `No lowest height was found: treat any height below the plan as too low. ${instead}.`;
}

/** The spot is not the field: a pilot who falls short of it may still come down on the same ground. */
export function insteadBelow(at: KeyId, { power }: Pick<Plan, 'power'>): string {
  if (at === 'final') {
    return power === 'idle'
      ? 'Power; with no engine, land short of the spot'
      : 'Land short of the spot, straight ahead';
  }
  return power === 'idle'
    ? 'Power; with no engine, a nearer aim point or another field'
    : 'A nearer aim point or another field, at once';
}

/** From lower than this a spot may be reached by a turn that is not sound: that is no reason to try. */
function fallsShort(at: KeyId, { request, units }: Setting): string {
  if (at === 'final') return 'even the best speed for this wind falls short';
  const sound = formatLeastHeight(leastFinal(request), units);
  const shortest = at === 'base-key' ? 'the corner cut' : 'a base turn at once and base leg turned in';
  return `even ${shortest}, with final from ${sound}, fall${at === 'base-key' ? 's' : ''} short`;
}

/** What to do within the band, and whether the plan itself is in it. */
export function withinWords(gate: Gate, setting: Setting): string {
  const { units } = setting;
  const band = gateBand(gate, units);
  if (band.none !== undefined) return noBandWords(gate, band.none, units, plannedWords(setting.plan));
  const { lower, higher } = remedies(gate.at, setting);
  const sound = formatLeastHeight(leastFinal(setting.request), units);
  if (gate.low !== null && gate.plan < gate.low - asNear) {
    const turned = `turn base leg in or out, to be on final by ${sound}`;
    return `The plan itself is below the band, and too low. In the band: ${gate.at === 'final' ? higher : turned}.`;
  }
  if (gate.high !== null && gate.plan > gate.high + asNear) {
    return `The plan itself is above the band, and too high. In the band: ${lower}.`;
  }
  // A gate is about a place, not about the plan's way on from there: another way may be sound where the plan's is
  // not.
  if (!turnsInTime(setting)) {
    if (gate.at === 'final') return `The plan itself is too low here, under ${sound}: begin higher.`;
    return `The plan's own turn to final is too low: turn base leg in, to be on final by ${sound}. Higher: ${higher}.`;
  }
  const isHighest = isAtPlan(band.high, gate, 'high', units);
  const above = isHighest ? 'There is nothing in hand above it either.' : `Higher: ${higher}.`;
  const planned = plannedWords(setting.plan);
  if (band.low === 'open') return `${planned}; no lower height was found sound. ${above}`;
  // The lowest height is the plan, or so near to it that there is nothing lower in the band to write about.
  if (isAtPlan(band.low, gate, 'low', units)) {
    return `${planned}; there is next to nothing in hand below it: treat any lower height as too low. ${above}`;
  }
  const over = isHighest ? 'There is next to nothing in hand above it.' : above;
  const atPlan = isToBeFlown(setting.plan) ? 'At the plan, fly the plan' : planned;
  return `${atPlan}. Lower: ${lower}. ${over}`;
}

const isToBeFlown = ({ grade }: Pick<Plan, 'grade'>) => grade !== 'not-to-be-flown';

const plannedWords = (plan: Pick<Plan, 'grade'>) =>
  isToBeFlown(plan) ? 'Fly the plan' : 'The plan is not to be flown';

/** Whether the plan's own turn to final is complete as high as it must be. */
export function turnsInTime({ plan, request }: Pick<Setting, 'plan' | 'request'>): boolean {
  const final = plan.keys.find(({ id }) => id === 'final');
  return final === undefined || final.height >= leastFinal(request);
}

/** Whether an edge is printed as the plan, or is no farther from it than a step of the page. */
function isAtPlan(edge: BandEdge, gate: Gate, which: 'low' | 'high', units: PageUnits): boolean {
  const value = gate[which];
  if (edge === 'open' || value === null) return false;
  const inHand = which === 'low' ? gate.plan - value : value - gate.plan;
  return edge === 'plan' || inHand < heightStep(units);
}

/** Why a gate has no band; never a word about what could be flown in it. */
export function noBandWords(
  { low, plan, high }: Gate,
  none: NoBand,
  units: PageUnits,
  planned = 'Fly the plan',
): string {
  const why: Readonly<Record<NoBand, string>> = {
    'no-path': 'none of the ways named above this table comes to the spot from here, at any height',
    crossed: 'the lowest height that reaches the spot is above the highest that does not pass it',
    'too-narrow': `its lowest and its highest height lie less than ${formatHeight(heightStep(units), units)} apart`,
  };
  return `No band: ${why[none]}. ${then(none)}`;

  function then(reason: NoBand): string {
    if (reason === 'no-path') return 'The plan is not one of them.';
    if (reason === 'crossed') return 'No height is sound here.';
    if (plan < low! - asNear) return 'The plan is below it, and too low.';
    if (plan > high! + asNear) return 'The plan is above it, and too high.';
    return `${planned}; there is nothing in hand below it or above it.`;
  }
}

function remedies(
  at: KeyId,
  { plan, request, units }: Setting,
): { readonly lower: string; readonly higher: string } {
  if (at !== 'final') return onPattern[at === 'base-key' ? 'base-key' : 'downwind-key'];
  const sound = formatLeastHeight(leastFinal(request), units);
  return { lower: 'the best speed for this wind, and no slower', higher: dragWords(plan, sound) };
}

/** What to do in the band with a height that is not the plan's. */
export const onPattern = {
  'downwind-key': {
    lower: 'turn base sooner, turn base leg in',
    higher: 'move the base turn out, turn base leg out; the rest on final',
  },
  'base-key': { lower: 'turn in, cut the corner', higher: 'turn base leg out; the rest on final' },
} as const;

/** What loses most height on final; an S-turn only where it is complete as high as the turn to final must be. */
function mostDragWords({ aircraft }: Pick<Plan, 'aircraft'>, sound: string): string {
  const turn = `an S-turn complete by ${sound}`;
  return aircraft.steepApproach ? `${turn}, then the steep approach` : turn;
}

/** What to do on final with height that has to be lost: no more than is needed. */
export function dragWords({ aircraft }: Pick<Plan, 'aircraft'>, sound: string): string {
  const turn = `S-turn complete by ${sound}`;
  return aircraft.steepApproach ? `the steep approach; for more, first an ${turn}` : `an ${turn}`;
}

/** What to do above the band. */
export function aboveWords(gate: Gate, setting: Setting): string {
  const { plan, units } = setting;
  const band = gateBand(gate, units);
  const instead = insteadAbove(gate.at, plan);
  if (band.none !== undefined) return `Higher than the plan: ${lowerFirst(instead)}.`;
  if (band.high !== 'open') return `${instead}: ${passes(gate.at, setting)}.`;
  return `No highest height was found: treat any height above the plan as too high. ${instead}.`;
}

/** At the downwind key there may be height for a whole circle, back to the key. */
export function insteadAbove(at: KeyId, { power }: Pick<Plan, 'power'>): string {
  if (at === 'downwind-key') {
    return power === 'idle'
      ? 'Go around; with no engine, circle first, or land farther in'
      : 'Circle first, or land farther in';
  }
  return power === 'idle'
    ? 'Go around; with no engine, land farther in'
    : 'Land farther in, or another field';
}

/** From higher than this, even the longest way ends past the spot. */
function passes(at: KeyId, { plan }: Setting): string {
  if (at === 'final') return `even ${dragShort(plan)} the spot`;
  const longest = at === 'base-key' ? 'base leg turned out' : 'the base turn moved out, base leg turned out';
  return `even ${longest} and the most that final takes pass the spot`;
}

function dragShort({ aircraft }: Plan): string {
  return aircraft.steepApproach ? 'an S-turn and the steep approach pass' : 'an S-turn passes';
}
