import { flownVeer } from '../../flight/air/flown-wind.ts';
import { windTurnsUpTo } from '../../flight/air/wind.ts';
import {
  airMoves,
  type Simplification,
  type SimplificationCode,
  wetWingShare,
  windmillingShare,
  windTurn,
} from '../../flight/questions/simplifications.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { formatAngle } from '../../units/angle-text.ts';
import { metresPerFoot } from '../../units/factors.ts';
import { numberText, roundTo, withUnit } from '../../units/rounding.ts';
import { formatHeight, formatSink } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';

/** A plan, and the size of each simplification in it. */
export interface Sized {
  readonly plan: Plan;
  readonly sizes: readonly Simplification[];
}

/** One thing that the model leaves out. */
interface LeftOut {
  /** A plain sentence without its full stop, about these plans. */
  readonly text: (units: PageUnits, plans: readonly Plan[]) => string;
  /** Its sizes, by the word that goes before each in a list of several. */
  readonly sizes: readonly (readonly [SimplificationCode, string])[];
  /** Said instead of a size where a plan has none; undefined where the thing then has no bearing on the plan. */
  readonly unsized?: (plan: Plan) => string | undefined;
}

const ours = 'a figure of ours, no source';
const percent = (share: number) => `${numberText(share * 100, 1)} %`;

const leftOut: readonly LeftOut[] = [
  {
    text: () =>
      'Idle thrust that stays the same whatever the mass, where the model keeps the ratio: 1/E = 1/E stopped − t · m₀/m, with t = 1/E stopped − 1/E idle at the mass m₀ that the table holds at',
    sizes: [['idle-thrust', 'idle thrust']],
    unsized: ({ aircraft, power, flown }) => {
      if (power !== 'idle' || flown.mass === aircraft.mass.reference) return undefined;
      return aircraft.glide.stopped
        ? 'no figure, for by it so light an aircraft would not come down'
        : 'no figure without the glide of a stopped engine';
    },
  },
  {
    text: () =>
      `A stopped propeller that windmills, where the ratio was measured with it still: ${percent(windmillingShare)} less ratio (${ours})`,
    sizes: [['windmilling', 'windmilling']],
  },
  {
    text: (units, plans) => {
      const [turn, upTo] = [formatAngle(windTurn), formatHeight(windTurnsUpTo, units)];
      return plans.some((plan) => flownVeer(plan) !== 0)
        ? `Wind that turns otherwise than planned: by ${turn} more up to ${upTo}, to the one side or the other (common practice, no source)`
        : `Wind that turns by ${turn} up to ${upTo} (common practice, no source; it veers north of the equator)`;
    },
    sizes: [
      ['veering-wind', 'veering wind'],
      ['backing-wind', 'backing wind'],
      ['wind-clockwise', `wind ${formatAngle(windTurn)} farther clockwise`],
      ['wind-anticlockwise', `wind ${formatAngle(windTurn)} farther anticlockwise`],
    ],
  },
  {
    text: (units) =>
      `Thermals and sink: ${formatSink(airMoves, units)} all the way to the round-out (${ours})`,
    sizes: [
      ['sinking-air', 'sinking air'],
      ['rising-air', 'rising air'],
    ],
  },
  {
    text: () => `A wet or dirty wing: ${percent(wetWingShare)} less glide ratio (${ours})`,
    sizes: [['wet-wing', 'wet wing']],
  },
  {
    // Virtual temperature: see `saturatedDensityShare`.
    text: () => 'Humidity, with the air saturated (US National Weather Service, density altitude)',
    sizes: [['humid-air', 'humid air']],
  },
  {
    text: () => 'A runway that slopes: no figure, for what the hands do over a slope is not known',
    sizes: [],
  },
  {
    text: () =>
      'The pilot: every turn begins on time, at its bank and speed. The common errors have figures of their own',
    sizes: [],
  },
  {
    text: () =>
      'Gusts, curl-over behind trees and buildings, ice, another load than the mass given here, and whatever differs between this very aircraft and the table its figures come from: no figure',
    sizes: [],
  },
];

/** What the sizes mean, in a sentence. */
export const howSized =
  'A size says how far short of the spot, or long, the planned flight would touch with that one thing changed and nobody correcting.';

/**
 * What is left out of these plans, one sentence each; with sizes where there is one plan that has them, and then
 * without what has no bearing on it.
 */
export function leftOutLines(
  units: PageUnits,
  sized?: Sized,
  plans: readonly Plan[] = sized ? [sized.plan] : [],
): string[] {
  return leftOut.flatMap(({ text, sizes, unsized }) => {
    const said = text(units, plans);
    if (!sized || sizes.length === 0) return [`${said}.`];
    const found = sizesOf(sizes, sized.sizes, units);
    const size = found.length > 0 ? found.join(', ') : unsized?.(sized.plan);
    return size === undefined ? [] : [`${said}: ${size}.`];
  });
}

/** The sizes of one plan in a sentence, for a book that says only once what they are sizes of. */
export function sizesSentence({ sizes }: Sized, units: PageUnits): string {
  const found = sizesOf(
    leftOut.flatMap((each) => each.sizes),
    sizes,
    units,
    true,
  );
  return found.length === 0
    ? 'What is not in the model has no size here: no flight was found.'
    : `What is not in the model, by its size in this plan: ${found.join('; ')}.`;
}

/** What the wind gradient, which is in the model, does to the plan; undefined in a wind without one. */
export function gradientSentence({ sizes }: Sized, units: PageUnits): string | undefined {
  const gradient = sizes.find(({ code }) => code === 'wind-gradient');
  if (gradient?.ends !== 'on-final') return undefined;
  const [does, way] = gradient.along < 0 ? ['costs', 'farther on'] : ['gives', 'shorter'];
  const { distance } = sizeOf(gradient, units);
  return `The wind gradient ${does} this plan ${distance}: flown without the energy of the wind’s change with height, the same procedure would touch that much ${way}.`;
}

function sizesOf(
  wanted: LeftOut['sizes'],
  sizes: readonly Simplification[],
  units: PageUnits,
  named = wanted.length > 1,
): string[] {
  return wanted.flatMap(([code, name]) => {
    const size = sizes.find((one) => one.code === code);
    return size ? [named ? `${name} ${sizeText(size, units)}` : sizeText(size, units)] : [];
  });
}

function sizeText(size: Simplification, units: PageUnits): string {
  if (size.ends === 'nowhere') return '(it does not come down)';
  if (size.ends === 'before-final') return '(the ground is met before final)';
  const { distance, isSmall } = sizeOf(size, units);
  return isSmall ? distance : `${distance} ${size.along < 0 ? 'short' : 'long'}`;
}

/** To 10 ft or 5 m; what that rounds to nothing is less than a step. */
function sizeOf({ along }: Simplification, { distance }: PageUnits): { distance: string; isSmall: boolean } {
  const [unit, step] = distance === 'ft' ? [metresPerFoot, 10] : [1, 5];
  const size = roundTo(Math.abs(along) / unit, step);
  return size === 0
    ? { distance: `under ${withUnit(step, step, distance)}`, isSmall: true }
    : { distance: withUnit(size, step, distance), isSmall: false };
}
