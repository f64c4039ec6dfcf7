import { expect, it } from 'vitest';
import { requestFor, runwayHeading } from '../../../tests/flight-school.ts';
import { Flight } from '../flying/fly.ts';
import { finalBand, finalLine, landingFrom } from './final-band.ts';
import { workOut } from './planner.ts';

const {
  asked,
  resolved: { conditions },
} = workOut(requestFor('osier', { detail: 'flight' }));

it('a final is kept for what it was asked with, and nothing else', () => {
  const first = finalBand(asked, conditions);
  expect(finalBand({ ...asked }, conditions)).toBe(first);
  for (const change of [
    { side: asked.side === 1 ? -1 : 1 },
    { bank: asked.bank + 0.1 },
    { pull: asked.pull + 0.1 },
    { leastFinal: asked.leastFinal + 30 },
  ] as const) {
    const kept = finalBand(asked, conditions);
    expect(finalBand({ ...asked, ...change }, conditions), JSON.stringify(change)).not.toBe(kept);
  }
});

it('lands a final that comes to the round-out fast and steep with the pull that its speed takes', () => {
  const legs = landingFrom(asked, conditions);
  expect(legs.at(-1)).toMatchObject({ kind: 'landing', firmer: true });
  const fly = (firmer: boolean) => {
    const flight = new Flight(conditions, runwayHeading, 'honest', {});
    const eas = 1.4 * conditions.speeds.approach;
    const height = conditions.aircraft.roundOut.height;
    flight.begin({ along: 0, across: 0, height: height + 3, eas }, legs[0]!);
    flight.leg({ ...legs[0]!, eas } as never);
    flight.leg({ ...legs.at(-1)!, firmer } as never);
    return flight.track.at(-1)!.phase;
  };
  expect([fly(true), fly(false)]).toEqual(['hold-off', 'round-out']);
});

it('a landing from a path that no pull makes level is not flyable', () => {
  const landing = landingFrom(asked, conditions).at(-1)!;
  for (const mode of ['search', 'honest'] as const) {
    const flight = new Flight({ ...conditions }, runwayHeading, mode);
    const eas = 1.4 * conditions.speeds.approach;
    flight.begin({ along: 0, across: 0, height: 0.35, eas }, finalLine(0.35, eas));
    flight.leg(landing);
    expect(flight.flyable, mode).toBe(false);
  }
});
