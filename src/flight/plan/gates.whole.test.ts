import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { closeApproach } from '../flying/open-approach.ts';
import { baseLeg, baseTrack, downwindLeg, joinFromBase } from '../flying/pattern-legs.ts';
import type { LineLeg, TurnLeg } from '../flying/procedure.ts';
import type { KeyPosition } from '../terms/plan.ts';
import { finalBand } from './final-band.ts';
import { planApproach, type WorkedOut, workOut } from './planner.ts';

// The edges of the gates compared with a search that tries path after path: it takes longer than all other tests of
// the core.

const soundFinal = 300 * 0.3048;

const winds = [
  ['calm', 0, 0],
  ['8 kt ahead', 0, 8],
  ['12 kt, 30 degrees from the right', 30, 12],
  ['8 kt across from the left', -90, 8],
  ['4 kt from behind', 180, 4],
] as const;
const cases = aircraftIds.flatMap((id) => winds.map(([words, from, speed]) => ({ id, words, from, speed })));

describe.each(cases)('gates of $id, $words', ({ id, from, speed }) => {
  const request = requestFor(id, { wind: windOffRunway(from, speed) });
  const { gates, keys } = planApproach(request);

  it.each(['downwind-key', 'base-key'] as const)(
    'leave at the %s no height between their edges without a path, and none outside with one',
    (at) => {
      const { low, high } = gates.find((each) => each.at === at)!;
      const makes = pathsFrom(keys.find(({ id }) => id === at)!, workOut({ ...request, detail: 'flight' }));
      for (const share of [0.02, 0.3, 0.6, 0.98]) {
        expect(makes(low! + share * (high! - low!)), `${share} of the way up`).toBe(true);
      }
      expect(makes(low! - 3), 'under the low edge').toBe(false);
      expect(makes(high! + 3), 'over the high edge').toBe(false);
    },
  );
});

/**
 * Whether any of many paths makes the spot from a height at a key: base turns in steps of an eighth of the spacing,
 * base legs in steps of 5 degrees, each joined to final and compared with the most and the least that a final covers.
 */
function pathsFrom(at: KeyPosition, { asked, resolved: { conditions } }: WorkedOut) {
  const { nearest, farthest } = finalBand(asked, conditions);
  const spacing = Math.abs(at.across);
  const isDownwind = at.id === 'downwind-key';
  const placesBy = (step: number) =>
    isDownwind ? Array.from({ length: 2 * step + 1 }, (_, i) => (i * spacing) / step) : [0];
  const anglesBy = (step: number) =>
    Array.from({ length: 120 / step + 1 }, (_, i) => ((i * step - 45) * Math.PI) / 180);
  const { side, bank } = asked;
  const turn = (angle: number): TurnLeg => ({
    kind: 'turn',
    phase: 'base',
    track: baseTrack(side) + side * angle,
    side: isDownwind || angle > 0 ? side : side === 1 ? -1 : 1,
    bank,
    rollOut: true,
  });
  // Near an edge the paths are few, and a coarse grid misses them all.
  return (height: number) =>
    isOnGrid(height, placesBy(32), anglesBy(5)) || isOnGrid(height, placesBy(64), anglesBy(1));
  function isOnGrid(height: number, places: readonly number[], angles: readonly number[]): boolean {
    return places.some((place) =>
      angles.some((angle) => {
        const start = { along: at.along, across: at.across, height, eas: conditions.polar.speed };
        const level: LineLeg = { ...baseLeg(side, 0, conditions), until: { lasts: 0 } };
        const before = isDownwind
          ? [downwindLeg(side, place - at.along, conditions), turn(angle)]
          : angle === 0
            ? [level]
            : [level, turn(angle)];
        const join = joinFromBase(side, bank, conditions, angle);
        const path = closeApproach({ start, stages: [{ before, join }], after: [] }, conditions);
        if (!path?.sound || path.finalHeight < soundFinal) return false;
        const { miss, finalHeight: z } = path;
        return -miss <= farthest(z) && -miss >= nearest(z);
      }),
    );
  }
}
