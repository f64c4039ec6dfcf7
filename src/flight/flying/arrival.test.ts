import { describe, expect, it } from 'vitest';
import { requestFor, runwayHeading } from '../../../tests/flight-school.ts';
import { standardGravity } from '../air/constants.ts';
import { turnRadius } from '../aircraft/turns.ts';
import { resolveRequest } from '../plan/request.ts';
import { arrivalHeight, type Gateway } from './arrival.ts';
import type { Position } from './reach.ts';

const degrees = Math.PI / 180;
const bank = 30 * degrees;
const turn = 2 * Math.PI;

/** A uniform wind from this many degrees to the right of the runway's heading, m/s. */
const conditionsIn = (speed: number, off = 0) =>
  resolveRequest(
    requestFor('osier', {
      windProfile: 'uniform',
      wind: { from: (((runwayHeading + off * degrees) % turn) + turn) % turn, speed },
    }),
  ).conditions;
const calm = conditionsIn(0);
const { polar } = calm;

const position: Position = { along: -2000, across: 100, height: 350, heading: 0 };
const arrive = (gateway: Gateway, conditions = calm, from = position) =>
  arrivalHeight(from, gateway, bank, conditions)!;

/**
 * m: height plus what the speed is worth, h + V^2/2g. In still air a glide spends only this: the true airspeed of a
 * constant equivalent one falls on the way down, and what that was worth is flown too.
 */
const energyHeight = (height: number) =>
  height + (polar.speed * calm.tasOverEas(height)) ** 2 / (2 * standardGravity);
const spentTo = (height: number) => energyHeight(position.height) - energyHeight(height);

describe('the height at which a glide passes a point on a track', () => {
  it('straight ahead is the height less the distance over the glide ratio, what the thicker air gives back counted', () => {
    for (const distance of [200, 900, 2000]) {
      const height = arrive({ along: position.along + distance, across: position.across, track: 0 });
      expect(Math.abs(spentTo(height) - distance / polar.ratio)).toBeLessThan(0.1);
    }
  });

  it('straight ahead in a wind follows the ground ratio E - (w/V) sqrt(1 + E^2)', () => {
    for (const speed of [4, 8]) {
      const height = arrive({ along: -1000, across: 100, track: 0 }, conditionsIn(speed));
      const tas = polar.speed * calm.tasOverEas(300);
      const ratio = polar.ratio - (speed / tas) * Math.sqrt(1 + polar.ratio ** 2);
      expect(Math.abs(350 - height - 1000 / ratio)).toBeLessThan(0.01 * (350 - height));
    }
  });

  it('is below nothing where the glide does not get there, by how much it is missed', () => {
    const height = arrive({ along: 1500, across: 100, track: 0 });
    expect(Math.abs(spentTo(height) - 3500 / polar.ratio)).toBeLessThan(0.2);
    expect(height).toBeLessThan(0);
  });

  it('is the same on the two hands', () => {
    const other: Position = { ...position, across: -100, heading: -0.7 };
    const own: Position = { ...position, heading: 0.7 };
    for (const off of [0, 50, 120]) {
      for (const gateway of [
        { along: -800, across: 700, track: 1 },
        { along: -2500, across: -400, track: -2.5 },
        { along: -1500, across: 300, track: Math.PI },
      ]) {
        const mirrored = { ...gateway, across: -gateway.across, track: -gateway.track };
        const one = arrive(gateway, conditionsIn(4, off), own);
        expect(arrive(mirrored, conditionsIn(4, -off), other)).toBeCloseTo(one, 6);
      }
    }
  });

  it('is lower for a point behind than for one as far ahead, by at least the half turn', () => {
    const ahead = arrive({ along: position.along + 900, across: 100, track: 0 });
    const behind = arrive({ along: position.along - 900, across: 100, track: Math.PI });
    const tas = polar.speed * calm.tasOverEas(350);
    const halfTurn = (Math.PI * turnRadius(tas, bank)) / polar.ratio;
    expect(ahead - behind).toBeGreaterThan(0.8 * halfTurn);
    expect(ahead - behind).toBeLessThan(2.5 * halfTurn);
  });

  it('is lower the more the last track turns away from the way there', () => {
    const heights = [0, 45, 90, 135, 180].map((track) =>
      arrive({ along: -800, across: 100, track: track * degrees }),
    );
    for (let i = 1; i < heights.length; i++) expect(heights[i]).toBeLessThan(heights[i - 1]!);
  });

  it('does not depend on which way the frame looks, in still air', () => {
    const gateway = { along: -800, across: 700, track: 1 };
    const turned = (by: number) => {
      const place = ({ along, across }: { along: number; across: number }) => ({
        along: along * Math.cos(by) - across * Math.sin(by),
        across: along * Math.sin(by) + across * Math.cos(by),
      });
      const from = { ...position, ...place(position), heading: position.heading + by };
      return arrive({ ...place(gateway), track: gateway.track + by }, calm, from);
    };
    for (const by of [0.4, 1.9, 3.1, -2.2]) expect(Math.abs(turned(by) - turned(0))).toBeLessThan(0.2);
  });

  it('is never more than the shortest way allows, nor much less where there is room', () => {
    for (const off of [0, 90, 180]) {
      for (const bearing of [0, 60, 120, 180, 240, 300]) {
        const [along, across] = [1500 * Math.cos(bearing * degrees), 1500 * Math.sin(bearing * degrees)];
        const gateway = {
          along: position.along + along,
          across: position.across + across,
          track: off * degrees,
        };
        const height = arrive(gateway);
        const straight = 350 - 1500 / polar.ratio;
        expect(spentTo(height)).toBeGreaterThan(1500 / polar.ratio - 0.2);
        // Only two half turns; banked at 30 degrees, and with the rolling, they lose a third more than straight
        // flight.
        const halfTurn = Math.PI * turnRadius(polar.speed * calm.tasOverEas(350), bank);
        expect(height).toBeGreaterThan(straight - (2 * 1.33 * halfTurn) / polar.ratio);
      }
    }
  });

  it('is not given in a wind that nothing gets forward against', () => {
    expect(
      arrivalHeight(position, { along: -800, across: 100, track: 0 }, bank, conditionsIn(35)),
    ).toBeUndefined();
  });
});
