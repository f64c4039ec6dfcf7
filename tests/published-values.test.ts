import { describe, expect, it } from 'vitest';
import { allChecks, summaryOf } from '../src/checks/all-checks.ts';
import { flyersOf } from '../src/checks/flyers.ts';
import { published } from '../src/checks/published.ts';
import { runChecks } from '../src/checks/run-checks.ts';
import { fieldAir } from '../src/flight/air/air.ts';
import { inducedDragReduction } from '../src/flight/aircraft/ground-effect.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import type { Obstacle } from '../src/flight/terms/airfield.ts';
import { readAircraft, readAirfield, readSchool } from '../src/school/read.ts';
import {
  radiansPerDegree as degree,
  pascalsPerInchOfMercury as inHg,
  metresPerSecondPerKnot as knot,
  metresPerFoot,
} from '../src/units/factors.ts';
import { parseQuantity } from '../src/units/quantity.ts';
import { allowance, title } from './published-rows.ts';

const lessons = new URL('../lessons', import.meta.url).pathname;
const at = (name: string) => `${lessons}/${name}`;
const row = (id: string) => published.find((one) => one.id === id)!;

// What computes our values is shared with the page (src/checks); what judges them here is not.
const results = runChecks();
const checks = allChecks(flyersOf((await readSchool(lessons)).value!));

describe('the published rows', () => {
  it('are each computed, by the core alone or by flying an aircraft', () => {
    const used = new Set([...checks.published, ...checks.trade].map((result) => result.row.id));
    expect(published.filter(({ id }) => !used.has(id)).map(({ id }) => id)).toEqual([]);
  });

  it('have ids of their own, a source and a tolerance', () => {
    expect(new Set(published.map(({ id }) => id)).size).toBe(published.length);
    for (const { source, tolerance } of published) {
      expect(source).not.toBe('');
      expect(Object.keys(tolerance)).toHaveLength(1);
    }
  });

  it('are enough to mean something', () => {
    expect(published.length).toBeGreaterThanOrEqual(160);
    expect(results.length).toBeGreaterThanOrEqual(150);
  });

  it('count as what they are in the summary', () => {
    const summary = summaryOf(checks);
    const printedWrong = published.filter((one) => one.printedWrong).length;
    expect(summary).toMatchObject({ rows: published.length, printedWrong, disagree: 0, flownDisagree: 0 });
    expect(summary.agree + summary.printedWrong + summary.trade).toBe(published.length);
    expect(summary.found + summary.memory).toBe(published.length);
  });
});

for (const heading of new Set(results.map((result) => result.heading))) {
  const ofTopic = results.filter((result) => result.heading === heading && !result.form);
  const right = ofTopic.filter((result) => !result.row.printedWrong);
  const wrong = ofTopic.filter((result) => result.row.printedWrong);

  describe(`${heading}: we agree with print`, () => {
    it.each(right.map((one) => [title(one.row), one] as const))(
      '%s',
      (_title, { row: one, ours, verdict }) => {
        const values = [one.value].flat() as number[];
        expect(ours).toHaveLength(values.length);
        ours.forEach((value, i) => {
          const off = Math.abs(value - values[i]!);
          expect(off, `ours ${value}, printed ${values[i]}`).toBeLessThanOrEqual(allowance(one, values[i]!));
        });
        expect(verdict).toBe('agrees');
      },
    );

    if (wrong.length > 0) {
      it.each(wrong.map((one) => [title(one.row), one] as const))(
        'but not where print is wrong: %s',
        (_title, { row: one, ours: [ours], verdict }) => {
          expect(Math.abs(ours! - one.exact!) / one.exact!).toBeLessThan(0.002);
          expect(Math.abs(ours! - (one.value as number)) / ours!).toBeGreaterThan(0.0015);
          expect(verdict).toBe('printed-wrong');
        },
      );
    }
  });
}

describe('forms and practice that are no single number', () => {
  it.each([
    [0, 29.92, 59],
    [1500, 30.1, 80],
    [5883, 30.1, 70],
    [4000, 29.5, 100],
  ])(
    `density altitude at %d ft, %d inHg, %d F: within 30 ft of the expression in ${row('da_nws_coeffs').source}`,
    (feet, setting, f) => {
      const [scale, factor, exponent] = row('da_nws_coeffs').value as number[];
      const air = fieldAir(feet * metresPerFoot, parseQuantity(`${f} F`, 'temperature'), setting * inHg);
      const theirs = scale! * (1 - (factor! * (air.pressure / inHg / (f + 459.67))) ** exponent!);
      expect(Math.abs(air.densityAltitude / metresPerFoot - theirs)).toBeLessThan(30);
    },
  );

  it.each([0.04, 0.07, 0.1, 0.15, 0.2, 0.25])(
    `ground effect at %d spans: within 4 points of ${row('ge_wies').source}`,
    (heightOverSpan) => {
      const theirs = (1 - 1.32 * heightOverSpan) / (1.05 + 7.4 * heightOverSpan);
      expect(Math.abs(inducedDragReduction(heightOverSpan) - theirs)).toBeLessThan(0.04);
    },
  );

  it.each([0.1, 0.15, 0.25, 0.4, 0.6, 1])(
    `ground effect at %d spans: within 3 points of the ${row('ge_exp').source} (from memory)`,
    (heightOverSpan) => {
      const theirs = Math.exp(-2.48 * (2 * heightOverSpan) ** 0.768);
      expect(Math.abs(inducedDragReduction(heightOverSpan) - theirs)).toBeLessThan(0.03);
    },
  );

  it.each(['osier-15', 'withy-80'])(
    `%s rounds out at 10 to 20 ft: ${row('fl_roundout').source}`,
    async (id) => {
      const [low, high] = row('fl_roundout').value as number[];
      const { value } = await readAircraft(at(`fleet/${id}.yaml`));
      expect(value!.roundOut.height / metresPerFoot).toBeGreaterThanOrEqual(low!);
      expect(value!.roundOut.height / metresPerFoot).toBeLessThanOrEqual(high!);
    },
  );

  it(`an obstacle is held against the screen height: ${row('fg_screen').source}`, async () => {
    const tall = { what: 'mast', height: 15, along: -140, across: 0, width: 10 };
    const plan = await planWith(30, [tall]);
    const clearance = plan.cautions.find(({ code }) => code === 'obstacle-clearance');
    expect(clearance!.limit / metresPerFoot).toBeCloseTo(row('fg_screen').value as number, 9);
  });

  it(`a bank above medium is cautioned from ${row('bk_steep').value} degrees: ${row('bk_medium').source}`, async () => {
    const limit = row('bk_steep').value as number;
    expect((row('bk_medium').value as number[])[1]).toBe(limit);
    const codes = async (bank: number) => (await planWith(bank)).cautions.map(({ code }) => code);
    expect(await codes(limit - 1)).not.toContain('bank-over-medium');
    const steep = (await planWith(limit + 1)).cautions.find(({ code }) => code === 'bank-over-medium');
    expect(steep!.limit).toBe(limit);
  });
});

/** Osier 15 at its own airfield in 12 kt, with a bank in degrees and other obstacles. */
async function planWith(bank: number, obstacles: readonly Obstacle[] = []) {
  const aircraft = (await readAircraft(at('fleet/osier-15.yaml'))).value!;
  const airfield = (await readAirfield(at('airfields/fallow-reach.yaml'))).value!;
  const wind = { from: 210 * degree, speed: 12 * knot };
  return planApproach({
    aircraft,
    airfield,
    runway: { ...airfield.runways[0]!, obstacles },
    approach: '180',
    power: 'idle',
    wind,
    bank: bank * degree,
  });
}
