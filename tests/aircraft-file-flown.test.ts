import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { flyTrial, sayIn } from '../components/trial-packet.ts';
import { indicatedSpeed } from '../src/flight/aircraft/calibration.ts';
import { sinOfGlide } from '../src/flight/aircraft/glide.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import { type AircraftFile, parseAircraft } from '../src/school/aircraft.ts';
import { requestFor, windOffRunway } from './flight-school.ts';

const knot = 1852 / 3600;
const footAMinute = 0.3048 / 60;
const best = { speed: 42 * knot, ratio: 6.4 };

const text = (idle: string, more = '') => `name: Osier 15
class: weight-shift
source: Invented for this test.
mass: { reference: 390 kg, flown: 365 kg }
wing: { span: 10 m, above-wheels: 2.6 m }
speeds: { stall: 29 kt, touchdown: 33 kt, approach: 45 kt }
glide:
  idle: ${idle}
turns: { bank: 30 deg, limit: 60 deg, roll-rate: 20 deg/s }
landing-roll: 90 m
limits: { wind: 18 kt, crosswind: 9 kt }
${more}`;

function read(yaml: string): { aircraft: AircraftFile | undefined; messages: string[] } {
  const file = new VFile({ path: 'osier.yaml', value: yaml });
  const aircraft = parseAircraft(file);
  return { aircraft, messages: file.messages.map(({ line, reason }) => `${line} ${reason}`) };
}
/** The points of the glide as somebody would write them down: whole feet a minute. */
const point = (knots: number) => {
  const sink = (knots * knot * sinOfGlide(best, knots * knot, 1)) / footAMinute;
  return `{ speed: ${knots} kt, sink: ${Math.round(sink)} ft/min }`;
};
const points = `{ points: [${[36, 40, 44, 50, 58].map(point).join(', ')}] }`;
const given = '{ speed: 42 kt, ratio: 6.4 }';
const flown = (yaml: string) => {
  const { aircraft, messages } = read(yaml);
  expect(messages).toEqual([]);
  return planApproach(requestFor('osier', { aircraft: aircraft!, wind: windOffRunway(20, 8) }));
};

describe('an aircraft file with measured points', () => {
  it('is flown as one with the best glide behind them, as nearly as whole feet a minute say', () => {
    const [measured, direct] = [flown(text(points)), flown(text(given))];
    expect(measured.made).toBe(true);
    expect(measured.flown.glideRatio).toBeCloseTo(6.4, 1);
    expect(measured.flown.glideSpeed / direct.flown.glideSpeed).toBeCloseTo(1, 2);
    expect(measured.aircraft.glide.idle.residual! / footAMinute).toBeLessThan(0.6);
    expect(Math.abs(measured.solved.value - direct.solved.value)).toBeLessThan(5);
  });

  it.each([
    [
      'points and a best glide',
      `{ speed: 42 kt, ratio: 6.4, points: [${[36, 44, 58].map(point).join(', ')}] }`,
      'not both',
    ],
    ['neither', '{}', 'points'],
    ['a speed alone', '{ speed: 42 kt }', 'ratio'],
    ['a ratio alone', '{ ratio: 6.4 }', 'speed'],
    ['points and a ratio', `{ ratio: 6.4, points: [${[36, 44, 58].map(point).join(', ')}] }`, 'not both'],
    ['two points', `{ points: [${[36, 44].map(point).join(', ')}] }`, 'points'],
  ])('is refused at its line for %s', (_words, idle, says) => {
    const { aircraft, messages } = read(text(idle));
    expect(aircraft).toBeUndefined();
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatch(/^8 /);
    expect(messages[0]).toContain(says);
  });

  it('that no polar goes through is refused where it is planned for, naming the points', () => {
    const falling = [36, 44, 58].map((knots) => `{ speed: ${knots} kt, sink: ${20_000 / knots} ft/min }`);
    const { aircraft } = read(text(`{ points: [${falling.join(', ')}] }`));
    expect(() => planApproach(requestFor('osier', { aircraft: aircraft! }))).toThrow(/points/);
  });
});

describe('an aircraft file with a calibration table', () => {
  const table = `calibration:
  - { indicated: 30 kt, equivalent: 33 kt }
  - { indicated: 45 kt, equivalent: 46.5 kt }
  - { indicated: 70 kt, equivalent: 69 kt }
`;
  const { aircraft } = read(text(given, table));
  const mass = 390;

  it('is flown at the equivalent speeds', () => {
    const plan = planApproach(requestFor('osier', { aircraft: aircraft!, mass }));
    // 42 kt is four fifths of the way from 30 to 45: 33 + 0.8 x 13.5 = 43.8 kt.
    expect(plan.track[0]!.eas / knot).toBeCloseTo(43.8, 6);
    expect(plan.flown.approachSpeed / knot).toBeCloseTo(46.5, 6);
    expect(indicatedSpeed(plan.track[0]!.eas, plan.aircraft) / knot).toBeCloseTo(42, 6);
  });

  it('has the indicated speeds printed', () => {
    const plan = flyTrial({ aircraft: aircraft!, mass });
    expect(sayIn(':aircraft[best-glide]', plan)).toBe('42 kt');
    expect(sayIn(':aircraft[approach]', plan)).toBe('45 kt');
    // Beyond the first row its 3 kt are kept.
    expect(plan.flown.stallSpeed / knot).toBeCloseTo(32, 6);
    expect(sayIn(':aircraft[stall]', plan)).toBe('29 kt');
  });

  it('whose speeds do not rise is refused where it is planned for', () => {
    const falling = aircraft!.calibration!.toReversed();
    const request = requestFor('osier', { aircraft: { ...aircraft!, calibration: falling } });
    expect(() => planApproach(request)).toThrow(/calibration-not-rising/);
  });
});
