import { expect, it } from 'vitest';
import { requestFor } from '../../../../tests/flight-school.ts';
import { saidCaution, saidCautions } from '../../../../tests/said-cautions.ts';
import { cautionsOf, graded } from '../cautions.ts';
import { planApproach, workOut } from '../planner.ts';
import { mostTailwind } from './wind-cautions.ts';

const degrees = Math.PI / 180;
const request = requestFor('osier', { detail: 'flight' });
const plan = planApproach(request);
const examined = {
  aircraft: plan.aircraft,
  runway: plan.runway,
  flown: plan.flown,
  track: plan.track,
  keys: plan.keys,
  pull: workOut(request).asked.pull,
};
const found = (changes: Partial<typeof examined>, code: string) =>
  cautionsOf({ ...examined, ...changes })
    .map((one) => saidCaution(one, { ...examined, ...changes }))
    .find((one) => one.code === code);

it('a bank a tenth of a degree over the limit of the aircraft is over it, one a tenth under is not', () => {
  const limited = (limit: number) => ({ ...plan.aircraft, turns: { ...plan.aircraft.turns, limit } });
  const most = Math.max(...plan.track.map(({ bank }) => Math.abs(bank)));
  expect(found({ aircraft: limited(most - 0.1 * degrees) }, 'bank-over-limit')).toMatchObject({
    grade: 'not-to-be-flown',
  });
  expect(found({ aircraft: limited(most + 0.1 * degrees) }, 'bank-over-limit')).toBeUndefined();
});

it('wheels a decimetre over the side of the runway are beside it', () => {
  const half = plan.runway.width / 2;
  const at = (across: number) =>
    found({ track: [...plan.track.slice(0, -1), { ...plan.track.at(-1)!, across }] }, 'off-runway');
  for (const side of [1, -1]) {
    expect(at(side * (half - 0.1))).toBeUndefined();
    expect(at(side * (half + 0.1))).toMatchObject({
      grade: 'not-to-be-flown',
      message: 'The wheels touch 1 m beside the runway.',
    });
  }
});

it('an obstacle just touched is met, and not to be flown', () => {
  const grade = (value: number) =>
    graded({
      ...{ code: 'obstacle-clearance', value, limit: 15, source: 'flown' },
      ...{ obstacle: 'mast', how: 'met' },
    }).grade;
  expect([-1, 0, 0.1].map(grade)).toEqual(['not-to-be-flown', 'not-to-be-flown', 'beyond-good-practice']);
});

it('the runway left is never said to be more than it is', () => {
  const runway = { ...plan.runway, spot: plan.runway.length - 57 };
  const said = found({ runway }, 'landing-distance')!;
  const metres = Number(/longer than the (\d+) m/.exec(said.message)![1]);
  expect(metres).toBeLessThanOrEqual(said.limit);
  expect(Number(/roll is (\d+) m/.exec(said.message)![1])).toBeGreaterThanOrEqual(said.value);
});

it('what an obstacle is passed by is never said to be more than it is', () => {
  const over = plan.track.find(({ phase, height }) => phase === 'final' && height < 40)!;
  let seen = 0;
  for (let spare = 2; spare < 14; spare += 0.37) {
    const obstacle = { what: 'mast', along: over.along, across: 0, width: 2, height: over.height - spare };
    const passed = planApproach({ ...request, runway: { ...request.runway, obstacles: [obstacle] } });
    const caution = saidCautions(passed).find(({ code }) => code === 'obstacle-clearance');
    const said = /(?:passes|within) ([\d.]+) ft/.exec(caution?.message ?? '');
    if (!caution || !said) continue;
    seen++;
    expect(Number(said[1]) * 0.3048, caution.message).toBeLessThanOrEqual(caution.value + 1e-9);
  }
  expect(seen).toBeGreaterThan(5);
});

it('the stricter of the aircraft and of the school has the tailwind, and 5 kt where neither says', () => {
  const { limits } = plan.aircraft;
  const most = (own: number | undefined, school: number | undefined) =>
    mostTailwind({ ...limits, tailwind: own }, school === undefined ? undefined : { mostTailwind: school });
  expect(most(undefined, 1)).toBe(1);
  expect(most(3, undefined)).toBe(3);
  expect(most(3, 2)).toBe(2);
  expect(most(2, 3)).toBe(2);
  expect(most(undefined, undefined)).toBeCloseTo((5 * 1852) / 3600, 9);
});

it('a round-out that would need less is begun no lower than that takes', () => {
  const { height, loadFactor: own } = plan.aircraft.roundOut;
  for (const pull of [own + 0.03, own + 0.061, own + 0.1]) {
    const { remedy } = found({ pull }, 'round-out-pull')!;
    const begun = Number(/^Begun at (\d+) ft/.exec(remedy!)![1]) * 0.3048;
    expect(begun).toBeGreaterThan((height * (pull - 1)) / (own - 1) - 1e-9);
  }
});
