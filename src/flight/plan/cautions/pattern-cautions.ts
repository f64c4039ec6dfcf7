import { metresPerFoot } from '../../../units/factors.ts';
import type { Found } from '../../terms/caution.ts';
import type { KeyPosition, TrackSample } from '../../terms/plan.ts';
import { type Examined, stricter } from './examined.ts';

/**
 * m. The turn to final is complete no lower than this. Edition C of the airplane handbook has dropped the 360, and
 * this figure with it. A school may ask for more.
 */
export const leastFinal = 300 * metresPerFoot;

/** m at the downwind key: about 1,000 ft is usual. */
export const keyHeights = { low: 800 * metresPerFoot, high: 1200 * metresPerFoot };

/** Where the keys of the pattern are: too low, too far, or before the runway. */
export function patternCautions(examined: Examined): Found[] {
  return [
    ...keyHeight(examined),
    ...baseTurn(examined),
    ...finalTurn(examined),
    ...aimBeforeThreshold(examined),
  ];
}

const keyOf = (id: KeyPosition['id'], { keys }: Pick<Examined, 'keys'>) => keys.find((key) => key.id === id);

function finalTurn(examined: Examined): Found[] {
  const final = keyOf('final', examined);
  const { limit, source } = stricter(leastFinal, 'power-off-approaches', examined.minimums?.finalTurn);
  if (!final || final.height >= limit) return [];
  return [{ code: 'final-turn-low', value: final.height, limit, source, at: 'final' }];
}

function keyHeight(examined: Examined): Found[] {
  const { low, high } = keyHeights;
  const key = keyOf('downwind-key', examined);
  if (!key || (key.height >= low - 1e-6 && key.height <= high + 1e-6)) return [];
  const limit = key.height < low ? low : high;
  const source = 'usual-key-heights';
  return [{ code: 'downwind-key-height', value: key.height, limit, source, at: 'downwind-key' }];
}

/** Past abeam by more than twice the distance of the downwind leg, the spot is far behind the wing, and small. */
function baseTurn(examined: Examined): Found[] {
  const [abeam, turn] = [keyOf('downwind-key', examined), keyOf('base-turn', examined)];
  if (!abeam || !turn) return [];
  const value = abeam.along - turn.along;
  const limit = 2 * Math.abs(abeam.across);
  if (value <= limit + 1e-9) return [];
  return [{ code: 'base-turn-far', value, limit, source: 'usual-base-turn', at: 'base-turn' }];
}

/** What is flown at round-out height or lower is flown over the runway, and the glide is aimed at the runway. */
function aimBeforeThreshold(examined: Examined): Found[] {
  const { runway, track, aircraft } = examined;
  const landingEnd = -runway.spot;
  const aim = keyOf('aim-point', examined)?.along ?? Number.POSITIVE_INFINITY;
  const low = lowPath(track, aircraft.roundOut.height)?.along ?? Number.POSITIVE_INFINITY;
  const value = landingEnd - Math.min(aim, low);
  // Not a place on the runway, but an allowance for the binary fractions that it is counted from.
  if (!(value > 1e-6) || !Number.isFinite(value)) return [];
  return [
    {
      code: 'aim-before-threshold',
      aim: aim < landingEnd ? landingEnd - aim : undefined,
      spot: runway.spot,
      value,
      limit: 0,
      source: 'aim-on-the-runway',
      at: 'aim-point',
      remedy: { spot: 'farther-in', by: value },
    },
  ];
}

/** The first sample of the landing with the wheels no higher than this (m). */
function lowPath(track: readonly TrackSample[], height: number): TrackSample | undefined {
  return track.find(
    ({ phase, height: wheels }) =>
      (phase === 'final' || phase === 'round-out' || phase === 'hold-off') && wheels <= height + 1e-6,
  );
}
