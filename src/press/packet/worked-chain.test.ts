import { describe, expect, it } from 'vitest';
import { sampleRequest } from '../../../tests/press-sample.ts';
import { flownWindAt } from '../../flight/air/flown-wind.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import { groundFigures } from '../../flight/questions/ground.ts';
import { figure, heldGlide, otherGlides, steadyGlide, workedChain } from './worked-chain.ts';

const plan = planApproach(sampleRequest);
const knot = 1852 / 3600;

function resultOf(what: string, occurrence = 0): string {
  return workedChain(plan)
    .flatMap((chapter) => chapter.steps)
    .filter((step) => step.what === what)[occurrence]!.result;
}

/** The first number of a printed result, as a reader would type it. */
function numberOf(result: string): number {
  return Number(/−?[\d,]+(\.\d+)?/.exec(result)![0].replace('−', '-').replaceAll(',', ''));
}

describe('the worked chain', () => {
  it('gives the density of the gas law (p = ρRT, R = 287.05 J/(kg K), US Standard Atmosphere 1976)', () => {
    const pressure = numberOf(resultOf('Pressure at the field'));
    expect(numberOf(resultOf('Density at the field'))).toBeCloseTo(pressure / (287.05287 * 298.15), 4);
    // QNH 1008 hPa at 310 ft: about 1 hPa for 8.3 m near sea level (common practice), so near 996.6 hPa.
    expect(pressure / 100).toBeCloseTo(1008 - (310 * 0.3048) / 8.3, 0);
  });

  it('gives the load factor and stall speed of 30° of bank: 1.155 and 7.5 % more (FAA-H-8083-25, load factor chart)', () => {
    expect(numberOf(resultOf('Load factor'))).toBeCloseTo(1.155, 3);
    const level = numberOf(resultOf('Stall, wings level'));
    expect(numberOf(resultOf('Stall speed in the turn')) / level).toBeCloseTo(1.0746, 3);
  });

  it('gives the rate and radius of turn of the handbook (FAA-H-8083-25: 1091 tan φ / V°/s; V²/(11.26 tan φ) ft, V in kt)', () => {
    const knots = numberOf(resultOf('True airspeed')) / knot;
    const tan = Math.tan(Math.PI / 6);
    const degreesPerSecond = (numberOf(resultOf('Rate of turn').replace('ω =', '')) * 180) / Math.PI;
    expect(degreesPerSecond / ((1091 * tan) / knots)).toBeCloseTo(1, 2);
    // The handbook's radius is that of a level turn; in the glide the path is shorter by cos²γ seen from above.
    const sin = Number(/sin γ = ([\d.]+)/.exec(resultOf('Glide angle'))![1]);
    const level = ((knots * knots) / (11.26 * tan)) * 0.3048;
    expect(numberOf(resultOf('Radius through the air')) / (level * Math.sqrt(1 - sin * sin))).toBeCloseTo(
      1,
      2,
    );
  });

  it('can be redone from its own printed numbers', () => {
    const [a, b] = ['parasite', 'induced'].map((part) =>
      numberOf(resultOf(`Drag over weight, ${part} part`).slice(4)),
    );
    const sin = (Math.sqrt(1 + 4 * b! * (a! + b!)) - 1) / (2 * b!);
    const printed = Number(/sin γ = ([\d.]+)/.exec(resultOf('Glide angle'))![1]);
    expect(sin).toBeCloseTo(printed, 3);
    const tas = numberOf(resultOf('True airspeed').slice(3));
    expect(numberOf(resultOf('Sink').slice(3))).toBeCloseTo(tas * printed, 2);
  });

  it('agrees with the flight: sink in a turn as flown, less what the thickening air gives back', () => {
    const { track, air } = planApproach({ ...sampleRequest, windProfile: 'uniform' });
    const { eas, bank, height, tas, sink } = track.filter(
      ({ phase, bank }) => phase === 'base-turn' && Math.abs(bank) > 0.52,
    )[3]!;
    // V grows by half of 4.2559 times 6.5 K a km over the temperature (US Standard Atmosphere 1976): V dV/dh / g.
    const thinning = (2.1279 * 0.0065) / (air.temperature - 0.0065 * height);
    const given = 1 + (tas * tas * thinning) / 9.80665;
    expect(steadyGlide(plan, eas, bank, height).sink / given).toBeCloseTo(sink, 3);
  });

  it('agrees with the flight: sink on final with the wind gradient, more than the steady one in this headwind', () => {
    const onFinal = plan.track.filter(({ phase, height }) => phase === 'final' && height > 16 && height < 40);
    expect(onFinal.length).toBeGreaterThan(3);
    for (const { eas, height, sink } of onFinal) {
      const held = heldGlide(plan, eas, height);
      expect(held.heldSink).toBeCloseTo(sink, 4);
      expect(held.heldSink).toBeGreaterThan(1.05 * held.sink);
    }
  });

  it('works the wind gradient from its own printed numbers', () => {
    const working = workedChain(plan)
      .flatMap((chapter) => chapter.steps)
      .find(({ what }) => what === 'With the airspeed held: sink')!.working;
    const [sink, tas, growth, ahead, alongShear, across, acrossShear, g] = [
      ...working.split('=')[1]!.matchAll(/−?\d+(\.\d+)?/g),
    ]
      .map(([number]) => Number(number.replace('−', '-')))
      .filter((_number, place) => place !== 1);
    const worth = 1 + (tas! * growth! + ahead! * alongShear! - across! * acrossShear!) / g!;
    expect(numberOf(resultOf('With the airspeed held: sink')) / (sink! / worth)).toBeCloseTo(1, 3);
  });

  it('ends final as slow as it was flown: the wind that drops below 50 ft is lost from the airspeed', () => {
    const flown = plan.track.findLast(({ phase }) => phase === 'final')!.eas;
    expect(numberOf(resultOf('Airspeed there'))).toBeCloseTo(flown, 2);
    expect(flown).toBeLessThan(plan.flown.approachSpeed - 0.5);
  });

  it('has the best glide of the aircraft table where the wings are level', () => {
    const { rows } = otherGlides(plan);
    expect(rows.at(-1)?.[1]).toBe('6.4:1');
  });

  it('takes the wind that was flown', () => {
    for (const at of plan.wind) expect(flownWindAt(plan, at.height).speed).toBeCloseTo(at.speed, 6);
  });

  describe.each([25, -15])('of a wind that turns by %s° with height', (degrees) => {
    const windVeer = (degrees * Math.PI) / 180;
    const veering = planApproach({ ...sampleRequest, airfield: { ...sampleRequest.airfield, windVeer } });
    const step = (what: string, occurrence = 0) =>
      workedChain(veering)
        .flatMap(({ steps }) => steps)
        .filter((each) => each.what === what)[occurrence]!;
    const numbers = (text: string) =>
      [...text.matchAll(/−?\d[\d,]*(\.\d+)?/g)].map(([number]) =>
        Number(number.replace('−', '-').replaceAll(',', '')),
      );

    it('takes the wind that was flown, in speed and direction, between the listed heights too', () => {
      for (const at of veering.wind) {
        const found = flownWindAt(veering, at.height);
        expect(found.speed).toBeCloseTo(at.speed, 9);
        expect(found.from).toBeCloseTo(at.from, 9);
      }
      const { from } = veering.flown.surfaceWind;
      expect(flownWindAt(veering, 157.4).from).toBeCloseTo(from + windVeer / 2, 9);
    });

    it('says how far it has turned, and takes it from there', () => {
      const { working, result } = step('Wind turned clockwise there');
      const [veer, height, low, top, bottom] = numbers(working);
      const turned = numberOf(result.slice(4));
      expect(turned).toBeCloseTo((veer! * (height! - low!)) / (top! - bottom!), 2);
      const carries = step('Wind that carries ahead and to the right');
      // The exponent comes last, before the angles.
      const [surface, of, at, alpha, from, delta, runway] = numbers(carries.working);
      expect(delta).toBe(turned);
      const speed = surface! * (of! / at!) ** alpha!;
      const angle = ((from! + delta! - runway!) * Math.PI) / 180;
      const [along, across] = numbers(carries.result);
      expect(along).toBeCloseTo(-speed * Math.cos(angle), 2);
      expect(across).toBeCloseTo(-speed * Math.sin(angle), 2);
    });

    it('gives its change with height from the printed numbers', () => {
      const { working, result } = step('Its change with height');
      const [shown, alpha, along, height, rate, across] = numbers(working.split('turning,')[1]!);
      expect(shown).toBe(rate);
      const [alongShear, acrossShear] = numbers(result);
      expect(alongShear).toBeCloseTo((alpha! * along!) / height! - rate! * across!, 4);
      expect(acrossShear).toBeCloseTo((alpha! * across!) / height! + rate! * along!, 4);
    });

    it('has not turned at the round-out', () => {
      expect(step('Wind turned clockwise there', 1).result).toBe('δ = 0°');
      const [, from] = numbers(step('Wind there').result);
      expect(from).toBeCloseTo(210, 9);
    });
  });

  it('says nothing of turning where the wind does not', () => {
    expect(JSON.stringify(workedChain(plan))).not.toMatch(/turn(ed|ing) clockwise|δ/);
  });

  it('brings the landing roll to this wind and air by steps that can be redone', () => {
    // 12 kt from 28 degrees off the runway, half of it counted; 25 °C, 310 ft, 1008 hPa; 365 kg where the figure is
    // for 390.
    const ahead = 12 * knot * Math.cos((28 * Math.PI) / 180);
    const over = numberOf(resultOf('Groundspeed counted for the landing roll'));
    const tas = 33 * knot * Math.sqrt(365 / 390) * Math.sqrt(1.225 / plan.air.density);
    expect(over).toBeCloseTo(tas - ahead / 2, 2);
    expect(numberOf(resultOf('Landing roll'))).toBeCloseTo(90 * (over / (33 * knot)) ** 2, 1);
    expect(resultOf('Landing roll')).toBe(`${figure(groundFigures(plan).roll)} m`);
  });

  it('ends at the aim point that was flown', () => {
    const aim = plan.keys.find(({ id }) => id === 'aim-point')!;
    const touchdown = plan.touchdown.along;
    expect(numberOf(resultOf('Aim point before the spot'))).toBeCloseTo(touchdown - aim.along, 1);
  });

  it.each([
    [1234.5678, '1,235'],
    [0.0771859, '0.07719'],
    [6.4, '6.4'],
    [-2.592, '−2.592'],
    [1e-14, '0'],
    [390, '390'],
  ])('prints %d as %s', (value, text) => {
    expect(figure(value)).toBe(text);
  });
});
