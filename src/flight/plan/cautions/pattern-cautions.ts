import { metresPerFoot } from '../../../units/factors.ts';
import { roundUpTo } from '../../../units/rounding.ts';
import type { KeyPosition, TrackSample } from '../../terms/plan.ts';
import { type Examined, type Found, handbook, stricter, told } from './examined.ts';

/**
 * m. The turn to final is complete at no less. Edition C of the airplane handbook has left the 360 out, and with it this figure.
 * A school may ask for more.
 */
export const leastFinal = 300 * metresPerFoot;

/** Of the power-off approaches with their heights. */
const powerOff = 'FAA-H-8083-3A, chapter 8, and FAA-H-8083-5, chapter 11';

/** m at the downwind key. */
const keyHeights = { low: 800 * metresPerFoot, high: 1200 * metresPerFoot };

/** Where the keys of the pattern lie: too low, too far, or before the runway. */
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
  const { limit, source } = stricter(leastFinal, powerOff, examined.minimums?.finalTurn);
  if (!final || final.height >= limit) return [];
  const said = told(final.height, limit, 'ft', 'least');
  return [
    {
      code: 'final-turn-low',
      message: `The turn to final is complete at ${said.value}; it should be complete at ${said.limit} or higher.`,
      value: final.height,
      limit,
      source,
      at: 'final',
      remedy: 'From a higher start the turn to final is complete higher.',
    },
  ];
}

function keyHeight(examined: Examined): Found[] {
  const { low, high } = keyHeights;
  const key = keyOf('downwind-key', examined);
  if (!key || (key.height >= low - 1e-6 && key.height <= high + 1e-6)) return [];
  const isLow = key.height < low;
  const said = told(key.height, isLow ? low : high, 'ft', isLow ? 'least' : 'most');
  return [
    {
      code: 'downwind-key-height',
      message: `The downwind key is flown at ${said.value}; about 1,000 ft (800 to 1,200 ft) is usual, and judged best by eye.`,
      value: key.height,
      limit: isLow ? low : high,
      source: `${powerOff}; the band about it: common practice, no source`,
      at: 'downwind-key',
    },
  ];
}

/** Past abeam by more than twice the distance of the downwind leg the spot lies far behind the wing, and small. */
function baseTurn(examined: Examined): Found[] {
  const [abeam, turn] = [keyOf('downwind-key', examined), keyOf('base-turn', examined)];
  if (!abeam || !turn) return [];
  const value = abeam.along - turn.along;
  const limit = 2 * Math.abs(abeam.across);
  if (value <= limit + 1e-9) return [];
  const said = told(value, limit, 'm', 'most');
  return [
    {
      code: 'base-turn-far',
      message: `The base turn lies ${said.value} past abeam, more than twice the distance of the downwind leg (${said.limit}): the spot is hard to judge from there.`,
      value,
      limit,
      source: 'common practice, no source',
      at: 'base-turn',
      remedy: 'A lower downwind key or a wider downwind leg brings it nearer.',
    },
  ];
}

/** What is flown at round-out height or lower is flown over the runway, and the glide is aimed at it. */
function aimBeforeThreshold(examined: Examined): Found[] {
  const { runway, track, aircraft } = examined;
  const landingEnd = -runway.spot;
  const aim = keyOf('aim-point', examined)?.along ?? Number.POSITIVE_INFINITY;
  const low = lowPath(track, aircraft.roundOut.height)?.along ?? Number.POSITIVE_INFINITY;
  const value = landingEnd - Math.min(aim, low);
  // Not a place of the runway, but of the binary fractions that it is counted from.
  if (!(value > 1e-6) || !Number.isFinite(value)) return [];
  const metres = roundUpTo(value, 10);
  const before = `before the landing end of the runway, which lies ${roundUpTo(runway.spot, 1)} m before the spot`;
  const aimed = aim < landingEnd;
  const aimMetres = roundUpTo(landingEnd - aim, 10);
  return [
    {
      code: 'aim-before-threshold',
      message: aimed
        ? `The aim point lies ${aimMetres} m ${before}.`
        : `The round-out begins ${metres} m ${before}.`,
      value,
      limit: 0,
      source: `the aim point: ${handbook}, chapter 9; that it and the round-out lie on the runway: common practice, no source`,
      at: 'aim-point',
      remedy: `With the spot ${metres} m farther in, all of the landing from the round-out on would lie on the runway.`,
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
