import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { arrivalHeight } from '../flying/arrival.ts';
import { resolveRequest } from '../plan/request.ts';
import { passesGateway } from './cut-corner.ts';

const gateway = { along: -350, across: 0, track: 0 };
const bank = Math.PI / 6;

/** Downwind, half-way round the base turn, and on base, of a left-hand pattern. */
const positions = [
  { along: -100, across: -500, height: 300, heading: Math.PI },
  { along: -400, across: -500, height: 280, heading: Math.PI },
  { along: -700, across: -450, height: 250, heading: (3 * Math.PI) / 4 },
  { along: -700, across: -300, height: 220, heading: Math.PI / 2 },
];

describe('passing a gateway', () => {
  for (const id of ['osier', 'withy'] as const) {
    it.each([
      [0, 0],
      [0, 10],
      [-40, 8],
      [60, 8],
    ])(
      `is as high as the slower search for the best way finds it: ${id}, %d degrees off the nose at %d kt`,
      (off, knots) => {
        const { conditions } = resolveRequest(requestFor(id, { wind: windOffRunway(off, knots) }));
        for (const position of positions) {
          const best = arrivalHeight(position, gateway, bank, conditions)!;
          const at = (enough: number) => passesGateway(position, { ...gateway, enough }, bank, conditions);
          // It aims the turns by the nose and not by the track: some metres of turn, and a metre or two of height.
          expect(at(best + 2.5)).toBeLessThan(best + 2.5);
          expect(at(best + 2.5)).toBeGreaterThan(best - 2.5);
          expect(at(best - 2.5)).toBeGreaterThanOrEqual(best - 2.5);
        }
      },
    );
  }
  it('is not possible where there is no room to turn', () => {
    const { conditions } = resolveRequest(requestFor('osier', { wind: windOffRunway(0, 60) }));
    const asked = { ...gateway, enough: 100 };
    expect(passesGateway({ ...positions[0]!, along: -900 }, asked, bank, conditions)).toBe(
      Number.NEGATIVE_INFINITY,
    );
  });
});
