import { airspeedFactor, pressureAltitude, qnhOf, thinningOf } from '../../flight/air/air.ts';
import {
  gasConstant,
  lapseRate,
  seaLevelDensity,
  seaLevelPressure,
  seaLevelTemperature,
  standardGravity,
} from '../../flight/air/constants.ts';
import { flownField, flownVeer, flownWindAt } from '../../flight/air/flown-wind.ts';
import {
  headwind,
  stillAir,
  surfaceWindHeight,
  turnedAt,
  type Wind,
  windTurnsUpTo,
} from '../../flight/air/wind.ts';
import { dragOverWeight, type Polar, polarAtMass, sinOfGlide } from '../../flight/aircraft/glide.ts';
import { inducedDragReduction } from '../../flight/aircraft/ground-effect.ts';
import { countedHeadwind, landingHeadwind, landingRunOf } from '../../flight/aircraft/landing-run.ts';
import { loadFactor, stallSpeedUnder, turnRate } from '../../flight/aircraft/turns.ts';
import { speedHeldDownTo } from '../../flight/flying/motions.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { kelvinAtZeroCelsius, metresPerSecondPerKnot, pascalsPerHectopascal } from '../../units/factors.ts';
import { numberText } from '../../units/rounding.ts';

/**
 * One line of the worked example: what, the formula with its numbers in, the result. Numbers in SI units, degrees for
 * angles;
 * `^` comes before an exponent that is not a raised figure.
 */
interface Step {
  readonly what: string;
  readonly working: string;
  readonly result: string;
}

export interface Chapter {
  readonly heading: string;
  readonly steps: readonly Step[];
}

/** A steady glide or gliding turn, in figures. m/s, rad. */
export interface SteadyGlide {
  readonly eas: number;
  readonly bank: number;
  readonly tas: number;
  /** Parasite and induced part of the drag, over weight. */
  readonly parasite: number;
  readonly induced: number;
  readonly sinGlide: number;
  readonly sink: number;
  readonly horizontal: number;
}

/** The steady glide of a plan at an airspeed (m/s EAS), bank (rad) and height (m); the core's own functions. */
export function steadyGlide(plan: Plan, eas: number, bank: number, height: number): SteadyGlide {
  const polar = polarOf(plan);
  const tas = eas * airspeedFactor(plan.air)(height);
  const parasite = dragOverWeight(polar, eas, 0);
  const sinGlide = sinOfGlide(polar, eas, Math.cos(bank));
  return {
    eas,
    bank,
    tas,
    parasite,
    induced: dragOverWeight(polar, eas, loadFactor(bank)) - parasite,
    sinGlide,
    sink: tas * sinGlide,
    horizontal: tas * Math.sqrt(1 - sinGlide * sinGlide),
  };
}

/**
 * What it costs to hold an airspeed on the way down through wind and air that change. SI units; see `descend` in the
 * core.
 */
export interface HeldGlide extends SteadyGlide {
  /** The wind along and across the landing direction, m/s, and its change, m/s for each metre up. */
  readonly wind: Wind;
  /** m/s: horizontal airspeed along the landing direction, drift allowed for. */
  readonly ahead: number;
  /** 1/s: how true airspeed at this equivalent airspeed grows with height. */
  readonly thinning: number;
  /** The share by which the sink is less than it would be without. */
  readonly worth: number;
  /** m/s. */
  readonly heldSink: number;
}

/** The glide of final at an airspeed (m/s EAS) held at a height (m): wings level, along the runway. */
export function heldGlide(plan: Plan, eas: number, height: number): HeldGlide {
  const glide = steadyGlide(plan, eas, 0, height);
  const wind = stillAir();
  flownField(plan)(height, wind);
  const ahead = Math.sqrt(Math.max(0, glide.horizontal ** 2 - wind.across ** 2));
  const thinning = glide.tas * thinningOf(plan.air)(height);
  const shear = ahead * wind.alongShear - wind.across * wind.acrossShear;
  const worth = 1 + (glide.tas * thinning + shear) / standardGravity;
  return { ...glide, wind, ahead, thinning, worth, heldSink: glide.sink / worth };
}

/** One complete chain from the inputs to the aim point, every number computed by the core for this plan. */
export function workedChain(plan: Plan): Chapter[] {
  return [
    airChapter(plan),
    speedChapter(plan),
    turnChapter(plan),
    gradientChapter(plan),
    finalChapter(plan),
    landingChapter(plan),
  ];
}

function polarOf(plan: Plan): Polar {
  const polar = polarAtMass(plan.aircraft, plan.power, plan.flown.mass);
  if (polar === undefined)
    throw new Error(`${plan.aircraft.name} has no glide with the engine ${plan.power}`);
  return polar;
}

/** m. Where the turns and the glide are worked out: the height of the first turn that is flown at the planned bank. */
function workedHeight(plan: Plan): number {
  const turn = plan.keys.find(({ id }) => id === 'base-turn' || id === 'final-turn');
  return turn?.height ?? plan.flown.height;
}

function airChapter(plan: Plan): Chapter {
  const { air } = plan;
  const height = workedHeight(plan);
  const factor = airspeedFactor(air);
  const densityExponent = standardGravity / (gasConstant * lapseRate) - 1;
  const qnh = qnhOf(air);
  const celsius = air.temperature - kelvinAtZeroCelsius;
  return {
    heading: 'Air',
    steps: [
      {
        what: 'Pressure at the field',
        working: `QNH ${figure(qnh / pascalsPerHectopascal, 6)} hPa is the standard pressure at ${figure(pressureAltitude(qnh))} m: p = ${figure(seaLevelPressure, 6)} × (1 − ${lapseRate} × (${figure(pressureAltitude(qnh))} + ${figure(air.elevation)}) / ${figure(seaLevelTemperature, 5)})^${figure(densityExponent + 1, 5)}`,
        result: `p = ${figure(air.pressure, 6)} Pa`,
      },
      {
        what: 'Density at the field',
        working: `ρ = p / (R T) = ${figure(air.pressure, 6)} / (${figure(gasConstant, 5)} × ${figure(air.temperature, 5)}), at ${figure(celsius, 3)} °C`,
        result: `ρ = ${figure(air.density, 5)} kg/m³`,
      },
      {
        what: 'True over equivalent airspeed at the field',
        working: `√(ρ₀ / ρ) = √(${figure(seaLevelDensity, 5)} / ${figure(air.density, 5)})`,
        result: figure(factor(0), 5),
      },
      {
        what: `The same at ${figure(height)} m above it`,
        working: `${figure(factor(0), 5)} × (1 − ${lapseRate} × ${figure(height)} / ${figure(air.temperature, 5)})^${figure(-densityExponent / 2)}`,
        result: figure(factor(height), 5),
      },
    ],
  };
}

function speedChapter(plan: Plan): Chapter {
  const { aircraft, flown, power } = plan;
  const given = (power === 'idle' ? aircraft.glide.idle : aircraft.glide.stopped)!;
  const ratio = `√(${figure(flown.mass)} / ${figure(aircraft.mass.reference)})`;
  const step = (what: string, reference: number, atMass: number): Step => ({
    what,
    working: `V = ${speed(reference)} × ${ratio}`,
    result: speed(atMass),
  });
  return {
    heading: 'Speeds at the mass flown',
    steps: [
      step('Best glide', given.speed, flown.glideSpeed),
      step('Approach', aircraft.speeds.approach, flown.approachSpeed),
      step('Touchdown', aircraft.speeds.touchdown, flown.touchdownSpeed),
      step('Stall, wings level', aircraft.speeds.stall, flown.stallSpeed),
    ],
  };
}

function glideSteps(plan: Plan, glide: SteadyGlide): Step[] {
  const polar = polarOf(plan);
  const u = figure(glide.eas / polar.speed);
  const best = Math.atan(1 / polar.ratio);
  const [a, b] = [figure(glide.parasite), figure(glide.induced)];
  const bank = glide.bank === 0 ? '' : ` cos² ${angle(glide.bank)}`;
  const e2 = `2 × ${figure(polar.ratio)}`;
  return [
    {
      what: 'Drag over weight, parasite part',
      working: `a = cos γ₀ · u² / 2E = cos ${angle(best)} × ${u}² / (${e2}), with tan γ₀ = 1/E`,
      result: `a = ${a}`,
    },
    {
      what: 'Drag over weight, induced part',
      working: `b = 1 / (2E cos γ₀ · cos²φ · u²) = 1 / (${e2} × cos ${angle(best)}${bank === '' ? '' : ` ×${bank}`} × ${u}²)`,
      result: `b = ${b}`,
    },
    {
      what: 'Glide angle',
      working: `sin γ = (√(1 + 4b(a + b)) − 1) / 2b = (√(1 + 4 × ${b} × (${a} + ${b})) − 1) / (2 × ${b})`,
      result: `sin γ = ${figure(glide.sinGlide)}, γ = ${angle(Math.asin(glide.sinGlide))}`,
    },
    {
      what: 'Sink',
      working: `w = V sin γ = ${figure(glide.tas)} × ${figure(glide.sinGlide)}`,
      result: `w = ${figure(glide.sink)} m/s`,
    },
    {
      what: 'Speed over still ground',
      working: `V cos γ = ${figure(glide.tas)} × cos ${angle(Math.asin(glide.sinGlide))}`,
      result: `${figure(glide.horizontal)} m/s`,
    },
  ];
}

function tasStep(glide: SteadyGlide): Step {
  return {
    what: 'True airspeed',
    working: `V = ${speed(glide.eas)} × ${figure(glide.tas / glide.eas, 5)}`,
    result: `V = ${figure(glide.tas)} m/s`,
  };
}

/** The same formulas for the other glides of the approach, results only: headings, then one row for each quantity. */
export function otherGlides(plan: Plan): { head: string[]; rows: string[][] } {
  const { glideSpeed, bank } = plan.flown;
  const height = workedHeight(plan);
  const low = plan.aircraft.roundOut.height;
  const glides = [
    steadyGlide(plan, glideSpeed, 0, height),
    steadyGlide(plan, glideSpeed, bank, height),
    steadyGlide(plan, endOfFinal(plan), 0, low),
  ];
  const row = (what: string, value: (glide: SteadyGlide) => string) => [what, ...glides.map(value)];
  return {
    head: [
      'Quantity',
      `Best glide, wings level, ${figure(height)} m`,
      `Best glide, ${angle(bank)} of bank, ${figure(height)} m`,
      `End of final, wings level, ${figure(low)} m`,
    ],
    rows: [
      row('True airspeed V', ({ tas }) => `${figure(tas)} m/s`),
      row('a', ({ parasite }) => figure(parasite)),
      row('b', ({ induced }) => figure(induced)),
      row('sin γ', ({ sinGlide }) => figure(sinGlide)),
      row('Sink', ({ sink }) => `${figure(sink)} m/s`),
      row('Speed over still ground', ({ horizontal }) => `${figure(horizontal)} m/s`),
      row('Glide in still air', ({ horizontal, sink }) => `${figure(horizontal / sink)}:1`),
    ],
  };
}

function turnChapter(plan: Plan): Chapter {
  const { bank, glideSpeed, stallSpeed } = plan.flown;
  const height = workedHeight(plan);
  const glide = steadyGlide(plan, glideSpeed, bank, height);
  const rate = turnRate(glide.tas, bank);
  const load = loadFactor(bank);
  const quarter = Math.PI / 2 / rate;
  return {
    heading: `Gliding turn at the planned bank of ${angle(bank)}, ${figure(height)} m above the field`,
    steps: [
      tasStep(glide),
      ...glideSteps(plan, glide),
      {
        what: 'Load factor',
        working: `n = 1 / cos φ = 1 / cos ${angle(bank)}`,
        result: `n = ${figure(load)}`,
      },
      {
        what: 'Stall speed in the turn',
        working: `wings-level stall × √n = ${speed(stallSpeed)} × √${figure(load)}`,
        result: speed(stallSpeedUnder(load, stallSpeed)),
      },
      {
        what: 'Rate of turn',
        working: `ω = g tan φ / V = ${standardGravity} × tan ${angle(bank)} / ${figure(glide.tas)}`,
        result: `ω = ${figure(rate)} rad/s, ${angle(rate)} a second`,
      },
      {
        what: 'Radius through the air',
        working: `r = V cos γ / ω = ${figure(glide.horizontal)} / ${figure(rate)}`,
        result: `r = ${figure(glide.horizontal / rate)} m`,
      },
      {
        what: 'A turn of 90°, without rolling in and out',
        working: `t = (π / 2) / ω; height lost = w t = ${figure(glide.sink)} × ${figure(quarter)}`,
        result: `${figure(quarter)} s, ${figure(glide.sink * quarter)} m`,
      },
    ],
  };
}

/** How far the wind has turned at a height; empty for a plan whose wind does not turn. */
function turnSteps(plan: Plan, height: number): Step[] {
  const veer = flownVeer(plan);
  if (veer === 0) return [];
  const [from, to] = [figure(surfaceWindHeight), figure(windTurnsUpTo)];
  const working =
    height > surfaceWindHeight
      ? `δ = ${angle(veer)} × (${figure(height)} − ${from}) / (${to} − ${from}), evenly from ${from} m to ${to} m (common practice, no source)`
      : `none up to ${from} m; above, evenly up to ${to} m (common practice, no source)`;
  return [{ what: 'Wind turned clockwise there', working, result: `δ = ${angle(turnedAt(height, veer))}` }];
}

/** m. Where the wind gradient is worked out: on final, above the height at which the airspeed is no longer held. */
const gradientHeight = 30;

function gradientChapter(plan: Plan): Chapter {
  const { flown, airfield, air, runway } = plan;
  const height = gradientHeight;
  const { tas, sink, horizontal, wind, ahead, thinning, worth, heldSink } = heldGlide(
    plan,
    flown.approachSpeed,
    height,
  );
  const [along, across] = [factor(wind.along), factor(wind.across)];
  const [alongShear, acrossShear] = [factor(wind.alongShear), factor(wind.acrossShear)];
  const alpha = figure(airfield.windExponent, 3);
  const { speed: surface, from } = flown.surfaceWind;
  const byPower = flown.windProfile === 'power';
  const growth = (standardGravity / (gasConstant * lapseRate) - 1) / 2;
  const veer = flownVeer(plan);
  const turned = veer === 0 ? '' : ` + ${factorAngle(turnedAt(height, veer))}`;
  const rate = factor(veer / (windTurnsUpTo - surfaceWindHeight));
  return {
    heading: `Final at ${speed(flown.approachSpeed)}, ${height} m above the field: what the wind gradient takes`,
    steps: [
      {
        what: 'Steady sink; speed over still ground then',
        working: 'the formulas above with that speed and no bank',
        result: `w = ${figure(sink)} m/s; ${figure(horizontal)} m/s`,
      },
      ...turnSteps(plan, height),
      {
        what: 'Wind that carries ahead and to the right',
        working: byPower
          ? `${figure(surface)} × (${height} / ${surfaceWindHeight})^${alpha} × −cos and −sin of (${angle(from)}${turned} − ${angle(runway.heading)})`
          : 'from the winds as flown, in the wind table above',
        result: `W = ${figure(wind.along)} m/s and ${figure(wind.across)} m/s`,
      },
      {
        what: 'Its change with height',
        working:
          veer !== 0
            ? `dW/dh = α W / h and the turning, ${rate} rad a metre: ${alpha} × ${along} / ${height} − ${rate} × ${across} and ${alpha} × ${across} / ${height} + ${rate} × ${along}`
            : byPower
              ? `dW/dh = α W / h = ${alpha} × ${along} / ${height} and ${alpha} × ${across} / ${height}`
              : 'between the winds as flown, in the wind table above',
        result: `${figure(wind.alongShear)} and ${figure(wind.acrossShear)} m/s a metre`,
      },
      {
        what: 'Change of the true airspeed with height',
        working: `dV/dh = V × ${figure(growth)} × ${lapseRate} / (${figure(air.temperature, 5)} − ${lapseRate} × ${height}), with V = ${figure(tas)}`,
        result: `${figure(thinning)} m/s a metre`,
      },
      {
        what: 'Airspeed along the landing direction',
        working: `√(${figure(horizontal)}² − ${figure(Math.abs(wind.across))}²)`,
        result: `${figure(ahead)} m/s`,
      },
      {
        what: 'With the airspeed held: sink',
        working: `w / (1 + (V dV/dh + V · dW/dh) / g) = ${figure(sink)} / (1 + (${figure(tas)} × ${figure(thinning)} + ${figure(ahead)} × ${alongShear} − ${across} × ${acrossShear}) / ${standardGravity})`,
        result: `${figure(heldSink)} m/s, ${numberText((1 / worth - 1) * 100, 0.1)} % more`,
      },
    ],
  };
}

/** m/s EAS at which the plan's final ends: where the nose stays, the airspeed is not quite the one that was held. */
function endOfFinal({ track, flown }: Plan): number {
  return track.findLast(({ phase }) => phase === 'final')?.eas ?? flown.approachSpeed;
}

function finalChapter(plan: Plan): Chapter {
  const { flown, aircraft, runway, airfield } = plan;
  const height = aircraft.roundOut.height;
  const eas = endOfFinal(plan);
  const glide = steadyGlide(plan, eas, 0, height);
  const wind = flownWindAt(plan, height);
  const against = headwind(wind, runway.heading);
  const across = Math.sqrt(Math.max(0, wind.speed ** 2 - against ** 2));
  const alongHeading = Math.sqrt(Math.max(0, glide.horizontal ** 2 - across ** 2));
  const ground = alongHeading - against;
  const surface = flown.surfaceWind.speed;
  const windWorking =
    flown.windProfile === 'power'
      ? `W(h) = W₁₀ (h / 10 m)^α = ${figure(surface)} × (${figure(Math.max(height, 2))} / ${surfaceWindHeight})^${figure(airfield.windExponent, 3)}`
      : 'from the winds as flown, in the wind table above';
  const veer = flownVeer(plan);
  const turned =
    veer === 0 ? '' : `, from ${angle(flown.surfaceWind.from)} + ${factorAngle(turnedAt(height, veer))}`;
  return {
    heading: `End of final: wings level, ${figure(height)} m above the spot, where the round-out begins`,
    steps: [
      {
        what: 'Airspeed there',
        working: `${speed(flown.approachSpeed)} is held down to ${figure(speedHeldDownTo)} m; below, the nose stays, the sink is w, and dV/dt = w (V · dW/dh) / V; flown in small steps`,
        result: speed(eas),
      },
      {
        what: 'Sink; speed over still ground',
        working: 'the formulas above with that speed and no bank; their numbers are in the next table',
        result: `w = ${figure(glide.sink)} m/s; ${figure(glide.horizontal)} m/s`,
      },
      ...turnSteps(plan, height),
      {
        what: 'Wind there',
        working: windWorking + turned,
        result: `${figure(wind.speed)} m/s from ${angle(wind.from)} true`,
      },
      {
        what: 'Wind against and across the landing direction',
        working: `${figure(wind.speed)} × cos and sin of (${angle(wind.from)} − ${angle(runway.heading)})`,
        result: `${figure(against)} m/s and ${figure(across)} m/s`,
      },
      {
        what: 'Groundspeed, drift allowed for',
        working: `√(${figure(glide.horizontal)}² − ${figure(across)}²) − (${figure(against)})`,
        result: `${figure(ground)} m/s`,
      },
      {
        what: 'Glide over the ground',
        working: `${figure(ground)} / ${figure(glide.sink)}`,
        result: `${figure(ground / glide.sink)}:1`,
      },
    ],
  };
}

function landingChapter(plan: Plan): Chapter {
  const { aircraft, roundOut } = plan;
  const { span, aboveWheels } = aircraft.wing;
  const reduction = inducedDragReduction(aboveWheels / span);
  const data = aircraft.roundOut.loadFactor;
  const moreThanData =
    roundOut.loadFactor > data + 0.001
      ? ` (with the ${figure(data)} of its data it is not level in time)`
      : '';
  const short = roundOut.roundOutDistance + roundOut.holdOffDistance;
  return {
    heading: 'Round-out and hold-off',
    steps: [
      {
        what: 'Ground effect with the wheels on the ground',
        working: `wing ${figure(aboveWheels)} m up, span ${figure(span)} m: ${figure(aboveWheels / span, 3)} spans`,
        result: `induced drag less by ${numberText(reduction * 100, 0.1)} %`,
      },
      {
        what: 'Round-out: from the aim point to where the path is level',
        working: `path curved with n = ${figure(roundOut.loadFactor)}${moreThanData}: dγ/dt = −g (n − cos γ) / V, until γ = 0; flown in small steps`,
        result: `${figure(roundOut.roundOutDistance)} m`,
      },
      {
        what: 'Hold-off: from there to where the wheels touch',
        working: `dV/dt = −g (a + b · share left by ground effect), the weight's work on the last height counted, from there to ${speed(plan.flown.touchdownSpeed)}; flown in small steps`,
        result: `${figure(roundOut.holdOffDistance)} m`,
      },
      {
        what: 'Aim point before the spot',
        working: `${figure(roundOut.roundOutDistance)} + ${figure(roundOut.holdOffDistance)}`,
        result: `${figure(short)} m`,
      },
      ...rollSteps(plan),
    ],
  };
}

/** The landing roll, from the figure given to this wind, this air and this mass: `landing-run.ts`. */
function rollSteps(plan: Plan): Step[] {
  const { aircraft, air, flown, runway } = plan;
  const factor = airspeedFactor(air)(0);
  const against = landingHeadwind(flown, runway.heading);
  const counted = against < 0 ? 1.5 : 0.5;
  const over = flown.touchdownSpeed * factor - countedHeadwind(against);
  return [
    {
      what: 'Groundspeed counted for the landing roll',
      working: `${figure(flown.touchdownSpeed)} · ${figure(factor)} − ${counted} · ${figure(against)}, with half of the reported wind where it is ahead, one and a half times where it is behind`,
      result: `${figure(over)} m/s`,
    },
    {
      what: 'Landing roll',
      working: `roll as given · (V / V as given)^2 = ${figure(aircraft.landingRoll)} · (${figure(over)} / ${figure(aircraft.speeds.touchdown)})^2`,
      result: `${figure(landingRunOf(plan))} m`,
    },
  ];
}

/**
 * A number with up to this many significant digits and a real minus: enough for a calculator to arrive at the printed
 * result.
 */
export function figure(value: number, digits = 4): string {
  // What rounding errors leave of zero.
  if (Math.abs(value) < 1e-9) return '0';
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  const text = numberText(value, 10 ** Math.min(0, exponent - digits + 1));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A figure to be multiplied: a negative one in brackets. */
function factor(value: number): string {
  const text = figure(value);
  return text.startsWith('−') ? `(${text})` : text;
}

function angle(radians: number): string {
  return `${figure((radians * 180) / Math.PI, 4)}°`;
}

/** An angle to be added: a negative one in brackets. */
function factorAngle(radians: number): string {
  const text = angle(radians);
  return text.startsWith('−') ? `(${text})` : text;
}

function speed(metresPerSecond: number): string {
  return `${figure(metresPerSecond)} m/s (${figure(metresPerSecond / metresPerSecondPerKnot, 3)} kt)`;
}
