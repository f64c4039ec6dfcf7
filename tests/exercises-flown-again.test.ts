import { describe, expect, it } from 'vitest';
import { figureIn, questionsOf, settingFor } from './exercises-questions.ts';
import { flyByOdex, type OdexFlight, type Passed } from './flight-by-odex.ts';
import { aircraftIds, windOffRunway } from './flight-school.ts';

// The exercises that ask about another wind, flown and solved again by a second integrator that shares no code with
// src/flight: it finds its own base turn and its own base key.

const knot = 1852 / 3600;
const foot = 0.3048;

type Setting = ReturnType<typeof settingFor>;

interface Solved {
  readonly pastAbeam: number;
  readonly seconds: number;
  readonly baseKeyHeight: number;
}

/** One answer for each aircraft and wind, however many questions ask for it. */
const solved = new Map<string, Solved>();

function solve(setting: Setting, knots: number): Solved {
  const name = `${setting.plan.aircraft.name} ${setting.plan.power} ${knots}`;
  const known = solved.get(name) ?? solveAnew(setting, knots * knot);
  solved.set(name, known);
  return known;
}

function solveAnew({ plan, request }: Setting, headwind: number): Solved {
  const { aircraft, airfield } = request;
  const { flown } = plan;
  const told = (pastAbeam: number, lead: number): OdexFlight => ({
    elevation: airfield.elevation,
    wind: { speed: headwind, offRunway: 0, exponent: airfield.windExponent, veer: airfield.windVeer ?? 0 },
    bestGlide: { speed: flown.glideSpeed, ratio: flown.glideRatio },
    approachSpeed: flown.approachSpeed,
    touchdownSpeed: flown.touchdownSpeed,
    rollRate: aircraft.turns.rollRate,
    span: aircraft.wing.span,
    wingAboveWheels: aircraft.wing.aboveWheels,
    roundOutHeight: aircraft.roundOut.height,
    pull: plan.roundOut.loadFactor,
    side: plan.circuit === 'right' ? 1 : -1,
    height: flown.keyHeight,
    spacing: flown.spacing,
    pastAbeam,
    bank: flown.bank,
    lead,
  });
  // The turn to final ends on the centreline, and the wheels touch at the spot: each is corrected by what it missed.
  let pastAbeam = flown.keyHeight * 2;
  let lead = flown.glideSpeed ** 2 / (9.80665 * Math.tan(flown.bank));
  const side = plan.circuit === 'right' ? 1 : -1;
  let slope = 2;
  let last: { miss: number; pastAbeam: number } | undefined;
  for (let tries = 0; tries < 12; tries++) {
    const places = flyByOdex(told(pastAbeam, lead));
    const wide = places.final.across * side;
    const miss = places.touchdown.along;
    if (Math.abs(miss) < 0.5 && Math.abs(wide) < 0.2) {
      return {
        pastAbeam,
        seconds: places['base-turn'].time,
        baseKeyHeight: baseKeyHeight(
          flyByOdex(told(pastAbeam, flown.spacing))['final-turn'],
          places['final-turn'],
        ),
      };
    }
    lead -= wide;
    if (last && Math.abs(wide) < 5 && pastAbeam !== last.pastAbeam) {
      slope = Math.max(0.5, -(miss - last.miss) / (pastAbeam - last.pastAbeam));
    }
    last = { miss, pastAbeam };
    pastAbeam += miss / slope;
  }
  throw new Error('the second integrator finds no base turn');
}

/** Wings level on base, or farther along the leg where the spot is then 45 degrees off the track. */
function baseKeyHeight(level: Passed, finalTurn: Passed): number {
  const short = Math.abs(level.across) - Math.abs(level.along);
  if (short <= 0) return level.height;
  const share = short / (Math.abs(level.across) - Math.abs(finalTurn.across));
  return level.height + share * (finalTurn.height - level.height);
}

const settings = aircraftIds.flatMap((id) => [
  { id, setting: settingFor(id) },
  { id, setting: settingFor(id, { wind: windOffRunway(-28, 12) }) },
  { id, setting: settingFor(id, { wind: windOffRunway(60, 8), circuit: 'right', power: 'stopped' }) },
]);

describe.each(settings)('exercises in another wind, for $id', ({ setting }) => {
  it('give the base turn that the second integrator finds', () => {
    const asked = questionsOf('base-turn-in-wind', setting);
    // Faults whose figures are too near each other are not choices. Where the day's wind is almost nothing along the
    // runway, its own figure is that of still air, and few draws have three left.
    expect(asked.length).toBeGreaterThan(2);
    for (const { question, right } of asked) {
      const { pastAbeam, seconds } = solve(setting, figureIn(question, /a headwind of (\d+) kt/));
      expect(Math.abs(figureIn(right, /^([\d,]+) m past abeam/) - pastAbeam), question).toBeLessThan(5.6);
      expect(Math.abs(figureIn(right, /, (\d+) s after/) - seconds), question).toBeLessThan(0.55);
    }
  });

  it('give the height at the base key that it finds', () => {
    const asked = questionsOf('base-key-height', setting);
    expect(asked.length).toBeGreaterThan(5);
    for (const { question, right } of asked) {
      const height = solve(setting, figureIn(question, /against (\d+) kt/)).baseKeyHeight / foot;
      expect(Math.abs(figureIn(right, /^([\d,]+) ft$/) - height), question).toBeLessThan(5.6);
    }
  });
});
