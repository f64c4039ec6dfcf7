import { describe, expect, it } from 'vitest';
import type { WindAtHeight } from '../terms/plan.ts';
import {
  crab,
  crosswind,
  drift,
  headwind,
  positiveAngle,
  stillAir,
  turnedAt,
  turningBends,
  type WindProfile,
  windAt,
  windField,
  windTriangle,
} from './wind.ts';

const degrees = Math.PI / 180;
const from = (direction: number, speed: number) => ({ from: direction * degrees, speed });
const at = (profile: WindProfile, height: number, surface = from(210, 6)) =>
  windAt(windField(surface, profile, 238 * degrees), height, 238 * degrees);
const power: WindProfile = { kind: 'power', exponent: 1 / 7, layers: [] };

describe('wind over a runway', () => {
  it('from straight ahead is headwind, from behind is tailwind', () => {
    expect(headwind(from(240, 5), 240 * degrees)).toBeCloseTo(5, 12);
    expect(headwind(from(60, 5), 240 * degrees)).toBeCloseTo(-5, 12);
  });

  it('from the right is a positive crosswind and drifts to the left', () => {
    expect(crosswind(from(330, 5), 240 * degrees)).toBeCloseTo(5, 12);
    expect(drift(from(330, 5), 240 * degrees).across).toBeCloseTo(-5, 12);
  });

  it('ahead drifts backward along the landing direction', () => {
    expect(drift(from(240, 5), 240 * degrees).along).toBeCloseTo(-5, 12);
  });
});

describe('the power-law profile', () => {
  it('is the reported wind at 10 m', () => expect(at(power, 10).speed).toBeCloseTo(6, 12));

  it('grows with the height over 10 m to the exponent', () => {
    expect(at(power, 300).speed).toBeCloseTo(6 * 30 ** (1 / 7), 12);
  });

  it('keeps its direction', () => {
    for (const height of [2, 40, 300]) expect(at(power, height).from / degrees).toBeCloseTo(210, 9);
  });

  it('is not carried below 2 m', () => {
    expect(at(power, 0).speed).toBe(at(power, 1.5).speed);
    // The corner is rounded: equal to a hundredth of the wind.
    expect(at(power, 1.5).speed / at(power, 2).speed).toBeGreaterThan(0.99);
    expect(at(power, 2.1).speed).toBeGreaterThan(at(power, 2).speed);
  });
});

describe('the uniform profile', () => {
  it('is the reported wind at every height', () => {
    const uniform: WindProfile = { kind: 'uniform', exponent: 1 / 7, layers: [] };
    for (const height of [0, 10, 500]) expect(at(uniform, height).speed).toBeCloseTo(6, 12);
  });
});

describe.each(['power', 'uniform', 'layers'] as const)("the wind's change with height, %s", (kind) => {
  const layers = [8, 9, 30, 200].map((height, i) => ({ height, ...from(200 + 25 * i, 4 + 2 * i) }));
  const field = windField(from(210, 6), { kind, exponent: 1 / 5, layers }, 238 * degrees);
  const wind = (height: number) => {
    const out = stillAir();
    field(height, out);
    return out;
  };

  it('is that of the wind itself, found by differences, at every height', () => {
    const half = 1e-4;
    for (let height = 0.3; height < 400; height *= 1.013) {
      const [below, here, above] = [wind(height - half), wind(height), wind(height + half)];
      expect(here.alongShear).toBeCloseTo((above.along - below.along) / (2 * half), 3);
      expect(here.acrossShear).toBeCloseTo((above.across - below.across) / (2 * half), 3);
    }
  });

  it('does not jump', () => {
    for (let height = 0.3; height < 400; height += 0.01) {
      expect(Math.abs(wind(height).alongShear - wind(height + 0.01).alongShear)).toBeLessThan(0.1);
    }
  });
});

describe('a wind that turns with height', () => {
  const veering = (veer: number, kind: WindProfile['kind'] = 'power'): WindProfile => ({
    kind,
    exponent: 1 / 7,
    veer: veer * degrees,
    layers: [{ height: 100, ...from(210, 6) }],
  });
  const turned = (profile: WindProfile, height: number) => at(profile, height).from / degrees - 210;

  it('has turned clockwise by its veer at 1,000 ft, evenly from 10 m, and no farther', () => {
    // (157.4 - 10) / (304.8 - 10) is one half.
    expect(turned(veering(20), 157.4)).toBeCloseTo(10, 9);
    expect(turned(veering(20), 330)).toBeCloseTo(20, 9);
    expect(turned(veering(20), 900)).toBeCloseTo(20, 9);
    expect(turned(veering(20), 9)).toBeCloseTo(0, 9);
    expect(turned(veering(-20), 157.4)).toBeCloseTo(-10, 9);
    // The corners are rounded.
    expect(Math.abs(turned(veering(20), 304.8) - 20)).toBeLessThan(0.3);
    expect(Math.abs(turned(veering(20), 10))).toBeLessThan(0.01);
    expect(turnedAt(157.4, 0.4)).toBeCloseTo(0.2, 12);
  });

  it('from ahead comes from the right above', () => {
    expect(crosswind(at(veering(20), 300, from(238, 6)), 238 * degrees)).toBeGreaterThan(1);
    expect(crosswind(at(veering(-20), 300, from(238, 6)), 238 * degrees)).toBeLessThan(-1);
  });

  it('is as strong as one that does not turn', () => {
    for (const height of [1, 10, 80, 304, 700])
      expect(at(veering(40), height).speed).toBeCloseTo(at(power, height).speed, 12);
  });

  it('turns by the power law only: uniform stays the same, and given layers have their own directions', () => {
    for (const kind of ['uniform', 'layers'] as const)
      expect(turned(veering(20, kind), 200)).toBeCloseTo(0, 9);
  });

  it.each([20, -35, 90])('has the change that is found by differences, and no other: %s°', (veer) => {
    const field = windField(from(260, 8), veering(veer), 238 * degrees);
    const wind = (height: number) => {
      const out = stillAir();
      field(height, out);
      return out;
    };
    const half = 1e-3;
    const about = turningBends.flatMap((bend) => [-0.04, -0.02, 0, 0.02, 0.04].map((x) => bend * (1 + x)));
    for (const height of [...about, 0.5, 2, 5, 30, 100, 200, 400]) {
      const [below, here, above] = [wind(height - half), wind(height), wind(height + half)];
      expect(here.alongShear).toBeCloseTo((above.along - below.along) / (2 * half), 4);
      expect(here.acrossShear).toBeCloseTo((above.across - below.across) / (2 * half), 4);
      expect(Math.abs(wind(height + 0.01).acrossShear - here.acrossShear)).toBeLessThan(0.01);
    }
    // The difference that a flipped sign of the turning would make is far larger than what is told apart here.
    const { along, acrossShear, across } = wind(100);
    const turning = acrossShear - (1 / 7 / 100) * across;
    expect(turning / along).toBeCloseTo((veer * degrees) / 294.8, 9);
    expect(Math.abs(2 * turning)).toBeGreaterThan(1e-3);
  });
});

describe('winds given at heights', () => {
  const layers: WindAtHeight[] = [
    { height: 10, ...from(200, 4) },
    { height: 160, ...from(260, 8) },
  ];
  const layered: WindProfile = { kind: 'layers', exponent: 1 / 7, layers };

  it('are met at those heights', () => {
    for (const layer of layers) {
      const found = at(layered, layer.height);
      expect(Math.abs(found.speed - layer.speed)).toBeLessThan(0.05);
      expect(Math.abs(found.from - layer.from) / degrees).toBeLessThan(0.5);
    }
  });

  it('are the mean vector half way between in the logarithm of height: 40 m between 10 and 160', () => {
    const low = drift(layers[0]!, 0);
    const high = drift(layers[1]!, 0);
    const middle = drift(at(layered, 40), 0);
    expect(middle.along).toBeCloseTo((low.along + high.along) / 2, 9);
    expect(middle.across).toBeCloseTo((low.across + high.across) / 2, 9);
  });

  it('turn smoothly where the heights are close together', () => {
    const close = [30, 36, 40].map((height, i) => ({ height, ...from(200 + 20 * i, 5) }));
    const found = at({ ...layered, layers: close }, Math.sqrt(30 * 36)).from / degrees;
    expect(found).toBeCloseTo(210, 6);
    expect(Math.abs(at({ ...layered, layers: close }, 36).from / degrees - 220)).toBeLessThan(1);
  });

  it('are constant below the first and above the last', () => {
    expect(at(layered, 1).speed).toBeCloseTo(4, 9);
    expect(at(layered, 900).speed).toBeCloseTo(8, 9);
  });
});

describe('the wind triangle', () => {
  it('closes: heading at the airspeed plus drift is the track at the groundspeed', () => {
    for (const track of [-2, -0.3, 0, 1.1, 3]) {
      const wind = { along: -4, across: 3 };
      const { heading, groundspeed, holds } = windTriangle(track, 20, wind);
      expect(holds).toBe(true);
      expect(20 * Math.cos(heading) + wind.along).toBeCloseTo(groundspeed * Math.cos(track), 12);
      expect(20 * Math.sin(heading) + wind.across).toBeCloseTo(groundspeed * Math.sin(track), 12);
    }
  });

  it('lays off to the right against a wind from the right', () => {
    expect(crab(0, 20, { along: 0, across: -5 })).toBeCloseTo(Math.asin(5 / 20), 12);
  });

  it('says where the wind across the track is stronger than the airspeed', () => {
    const { holds, heading } = windTriangle(0, 10, { along: 0, across: -12 });
    expect(holds).toBe(false);
    expect(heading).toBeCloseTo(Math.PI / 2, 12);
  });
});

describe('an angle', () => {
  it('comes back between nought and a whole turn', () => {
    expect(positiveAngle(-0.5)).toBeCloseTo(2 * Math.PI - 0.5, 12);
    expect(positiveAngle(7)).toBeCloseTo(7 - 2 * Math.PI, 12);
    expect(positiveAngle(0)).toBe(0);
  });
});
