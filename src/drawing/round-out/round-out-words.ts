import { indicatedSpeed } from '../../flight/aircraft/calibration.ts';
import type { Plan, TrackSample } from '../../flight/terms/plan.ts';
import { numberText, withUnit } from '../../units/rounding.ts';
import { formatDistance, formatLowHeight, formatSpeed } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { missText } from '../../words/keys/place-words.ts';
import { touchesAtSpot } from '../pattern/pattern-words.ts';
import { type DrawnLanding, dashedNote, landingFaultSentence } from './round-out-faults.ts';
import { dragSaved, type LandingEnd } from './round-out-flight.ts';

export function speedWords({ aircraft }: Plan, { eas }: TrackSample, units: PageUnits): string {
  return formatSpeed(indicatedSpeed(eas, aircraft), units);
}

/** `12 ft, 44 kt`. */
export function stateWords(plan: Plan, sample: TrackSample, units: PageUnits): string {
  return `${formatLowHeight(sample.height, units)}, ${speedWords(plan, sample, units)}`;
}

/** Ground covered in a stretch. */
export function stretchWords(samples: readonly TrackSample[], units: PageUnits): string {
  return formatDistance(samples.at(-1)!.along - samples[0]!.along, units);
}

function drawnWords(exaggeration: number): string {
  if (exaggeration === 1) return 'Heights and distances drawn alike.';
  return `Heights drawn ${numberText(exaggeration, 1)}× as large as distances.`;
}

/** What ground effect does, from the wing's height over its span. */
function groundEffectWords(plan: Plan, end: LandingEnd): string {
  const per = (sample: TrackSample) => withUnit(100 * dragSaved(plan, sample.height), 1, '%');
  const { holdOff } = end;
  const { span, aboveWheels } = plan.aircraft.wing;
  const share = (holdOff[0]!.height + aboveWheels) / span;
  return (
    `Hold-off: the height that is left goes with the speed. Ground effect: at its start the wing is ` +
    `${numberText(share, 0.01)} of its span above the ground, which takes ` +
    `${per(holdOff[0]!)} of the induced drag away, ${per(holdOff.at(-1)!)} at touchdown: the speed falls off slowly.`
  );
}

export function roundOutNote({ plan, end, faults }: DrawnLanding, exaggeration: number): string {
  const load = numberText(plan.roundOut.loadFactor, 0.01);
  const dashes =
    faults.length > 0
      ? `Dotted: the glide carried on to the aim point. ${dashedNote(faults)}`
      : 'Dashed: the glide carried on to the aim point.';
  return (
    `Height of the wheels above the spot, distance along the runway. ${drawnWords(exaggeration)} Heavy line: round-out, ` +
    `at a load factor of ${load}. ${dashes} ${groundEffectWords(plan, end)}`
  );
}

export function roundOutTitle({ aircraft, runway }: Plan): string {
  return `Round-out and hold-off of ${aircraft.name} on runway ${runway.name}, height against distance`;
}

/** The drawing for a reader who cannot see it. */
export function roundOutDescription(landing: DrawnLanding, units: PageUnits, exaggeration: number): string {
  const { plan, end, faults } = landing;
  const { roundOut, holdOff } = end;
  const aim = plan.keys.find(({ id }) => id === 'aim-point');
  const touch = holdOff.at(-1)!;
  const where = touchesAtSpot(plan) ? 'at the spot' : missText(plan.touchdown.along, units);
  return [
    `The round-out begins at ${stateWords(plan, roundOut[0]!, units)}, ${fromSpot(roundOut[0]!, units)}.`,
    `It ends level and the hold-off begins at ${stateWords(plan, holdOff[0]!, units)}, ${fromSpot(holdOff[0]!, units)}.`,
    `Round-out ${stretchWords(roundOut, units)}, hold-off ${stretchWords(holdOff, units)}.`,
    `The wheels touch ${where} at ${speedWords(plan, touch, units)}.`,
    ...(aim ? [`The aim point lies ${fromSpot(aim, units)}.`] : []),
    ...faults.map((fault) => landingFaultSentence(fault, units)),
    roundOutNote(landing, exaggeration),
  ].join(' ');
}

function fromSpot({ along }: { along: number }, units: PageUnits): string {
  return `${formatDistance(Math.abs(along), units)} ${along < 0 ? 'before' : 'past'} the spot`;
}
