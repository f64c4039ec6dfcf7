import { describe, expect, it } from 'vitest';
import { planApproach } from '../src/flight/plan/planner.ts';
import type { PlanRequest } from '../src/flight/terms/plan.ts';
import { flyByOdex, type OdexFlight, type Places } from './flight-by-odex.ts';
import { type AircraftId, aircraftIds, requestFor, windOffRunway } from './flight-school.ts';

/** The plan, and the same numbers flown by odex. */
function both(request: PlanRequest) {
  const plan = planApproach(request);
  const { aircraft, airfield, runway } = request;
  const side = plan.circuit === 'right' ? 1 : -1;
  const { height, spacing, bank } = plan.flown;
  // The plan's inner numbers as its track shows them: where the turn to final begins, or the bank of the one turn.
  const twoTurns = plan.track.some(({ phase }) => phase === 'base');
  const lead = Math.abs(plan.keys.find(({ id }) => id === 'final-turn')!.across);
  const oneBank = Math.max(...plan.track.map((sample) => Math.abs(sample.bank)));
  const told: OdexFlight = {
    elevation: airfield.elevation,
    wind: {
      speed: request.wind.speed,
      offRunway: request.wind.from - runway.heading,
      exponent: plan.flown.windProfile === 'uniform' ? 0 : airfield.windExponent,
      veer: airfield.windVeer ?? 0,
    },
    bestGlide: { speed: plan.flown.glideSpeed, ratio: plan.flown.glideRatio },
    approachSpeed: plan.flown.approachSpeed,
    touchdownSpeed: plan.flown.touchdownSpeed,
    rollRate: aircraft.turns.rollRate,
    span: aircraft.wing.span,
    wingAboveWheels: aircraft.wing.aboveWheels,
    roundOutHeight: aircraft.roundOut.height,
    pull: plan.roundOut.loadFactor,
    side,
    height,
    spacing,
    pastAbeam: plan.solved.value,
    bank: twoTurns ? bank : oneBank,
    lead: twoTurns ? lead : undefined,
  };
  return { plan, told, places: flyByOdex(told) };
}

function expectAgreement({ plan, places }: ReturnType<typeof both>): void {
  expect(plan.made).toBe(true);
  for (const [id, theirs] of Object.entries(places) as [keyof Places, Places[keyof Places]][]) {
    const ours = plan.keys.find((key) => key.id === id);
    expect(ours, id).toBeDefined();
    const apart = Math.hypot(
      ours!.along - theirs.along,
      ours!.across - theirs.across,
      ours!.height - theirs.height,
    );
    expect(apart, `${id}, m apart`).toBeLessThan(0.02);
    if (Number.isNaN(theirs.time)) continue;
    expect(Math.abs(ours!.time - theirs.time), `${id}, s apart`).toBeLessThan(0.01);
  }
  expect(Math.abs(plan.touchdown.speed - places.touchdown.groundspeed)).toBeLessThan(0.01);
}

const airs = [
  ['calm', 0, 0],
  ['12 kt down the runway', 0, 12],
  ['9 kt from 90 degrees to the right', 90, 9],
  ['9 kt from 90 degrees to the left', -90, 9],
  ['12 kt from 30 degrees to the left', -30, 12],
  ['15 kt from 45 degrees to the right', 45, 15],
] as const;

describe.each(aircraftIds)('the core and odex fly %s alike', (id: AircraftId) => {
  for (const circuit of ['left', 'right'] as const) {
    it.each(airs)(`in a ${circuit}-hand pattern, %s`, (_words, degrees, knots) => {
      expectAgreement(both(requestFor(id, { circuit, wind: windOffRunway(degrees, knots) })));
    });
  }

  it('with the engine stopped, heavy, in a uniform wind', () => {
    const request = requestFor(id, {
      power: 'stopped',
      mass: 400,
      windProfile: 'uniform',
      wind: windOffRunway(20, 10),
    });
    expectAgreement(both(request));
  });

  it.each([
    ['veers by 25 degrees', 25],
    ['backs by 40', -40],
  ])('in a wind that %s', (_words, veer) => {
    const request = requestFor(id, { wind: windOffRunway(20, 12) });
    const airfield = { ...request.airfield, windVeer: (veer * Math.PI) / 180 };
    expectAgreement(both({ ...request, airfield }));
  });

  it('where the spacing leaves room for one continuous turn only', () => {
    const spacing = id === 'osier' ? 130 : 240;
    const flown = both(requestFor(id, { spacing, wind: windOffRunway(10, 6) }));
    expect(flown.told.lead).toBeUndefined();
    expectAgreement(flown);
  });
});

describe('the comparison would notice', () => {
  const { plan, told } = both(requestFor('osier', { wind: windOffRunway(30, 10) }));
  const changes: [string, Partial<OdexFlight>][] = [
    ['a base turn begun a foot later', { pastAbeam: told.pastAbeam + 0.3 }],
    ['a tenth of a degree more bank', { bank: told.bank + 0.0017 }],
    [
      'a thousandth more glide ratio',
      { bestGlide: { ...told.bestGlide, ratio: told.bestGlide.ratio * 1.001 } },
    ],
    ['a wind profile with an exponent of 0.144 for 0.143', { wind: { ...told.wind, exponent: 0.144 } }],
    ['a wind that turns by a tenth of a degree', { wind: { ...told.wind, veer: 0.1 * (Math.PI / 180) } }],
    ['a hundredth of a g in the pull', { pull: told.pull + 0.01 }],
    ['a roll rate half a degree a second higher', { rollRate: told.rollRate + 0.0087 }],
  ];
  it.each(changes)('%s', (_words, change) => {
    const { touchdown } = flyByOdex({ ...told, ...change });
    const apart = Math.hypot(
      touchdown.along - plan.touchdown.along,
      touchdown.across - plan.touchdown.across,
    );
    expect(apart).toBeGreaterThan(0.02);
  });
});
