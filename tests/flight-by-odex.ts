import { createRequire } from 'node:module';

/*
 * For tests: the half-circuit approach written out a second time, from the formulas and not from src/flight, and
 * integrated by odex (Hairer and Wanner's extrapolation code, in JavaScript). It is given the numbers of a plan and
 * flies them; it solves for nothing. Where it agrees with the core, both read the formulas the same way.
 */

type Rates = (time: number, y: number[]) => number[];
interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  solve(f: Rates, from: number, y: number[], to: number): { y: number[] };
}
// Required, not imported: the package ships its TypeScript source beside the build, and we do not want to check that.
const { Solver: OdexSolver } = createRequire(import.meta.url)('odex') as {
  Solver: new (n: number) => Solver;
};

/** All in SI units and rad; winds as the direction they blow from, relative to the landing direction. */
export interface OdexFlight {
  readonly elevation: number;
  readonly wind: {
    readonly speed: number;
    readonly offRunway: number;
    readonly exponent: number;
    /** How far it turns clockwise from 10 m to 304.8 m. */
    readonly veer: number;
  };
  readonly bestGlide: { readonly speed: number; readonly ratio: number };
  readonly approachSpeed: number;
  readonly touchdownSpeed: number;
  readonly rollRate: number;
  readonly span: number;
  readonly wingAboveWheels: number;
  readonly roundOutHeight: number;
  readonly pull: number;
  /** 1 right-hand, -1 left-hand. */
  readonly side: 1 | -1;
  readonly height: number;
  readonly spacing: number;
  readonly pastAbeam: number;
  readonly bank: number;
  /** m from the centreline at which the turn to final begins; undefined where base is one continuous turn. */
  readonly lead: number | undefined;
}

export interface Passed {
  readonly time: number;
  readonly along: number;
  readonly across: number;
  readonly height: number;
  readonly groundspeed: number;
}

export type Places = Readonly<
  Record<'base-turn' | 'final-turn' | 'final' | 'aim-point' | 'touchdown', Passed>
>;

const g = 9.80665;
const gas = 8314.32 / 28.9644;
const lapse = 0.0065;
const [X, Y, H, PSI, PHI, V, GAMMA] = [0, 1, 2, 3, 4, 5, 6] as const;

/** Flies the half circuit with odex, and says where and when each leg began. */
export function flyByOdex(flight: OdexFlight): Places {
  const { side, bestGlide } = flight;

  const fieldTemperature = 288.15 - lapse * flight.elevation;
  const density = (height: number) => {
    const pressureAtField = 101325 * (fieldTemperature / 288.15) ** (g / (gas * lapse));
    const temperature = fieldTemperature - lapse * height;
    const pressure = pressureAtField * (temperature / fieldTemperature) ** (g / (gas * lapse));
    return pressure / (gas * temperature);
  };
  const trueOver = (height: number) => Math.sqrt(101325 / (gas * 288.15) / density(height));

  /** m: the height whose wind is met: not below 2 m, with the corner there rounded by half a metre to each side. */
  const carried = (height: number) =>
    height <= 1.5 ? 2 : height >= 2.5 ? height : 2 + (height - 1.5) ** 2 / 2;

  /** How much of the way round a corner has been covered: 0 before it, 1 after, and a straight line between. */
  const past = (height: number, corner: number, half: number) =>
    Math.min(1, Math.max(0, (height - corner + half) / (2 * half)));
  /**
   * rad for each metre: the turning begins at about 10 m, within half a metre, and ends at about 304.8 m, within a
   * twentieth of it.
   */
  const spin = (height: number) =>
    (flight.wind.veer / 294.8) * (past(height, 10, 0.5) - past(height, 304.8, 15.24));
  /** The integral of `past`: a parabola within the corner, the distance beyond it above. */
  const behind = (height: number, corner: number, half: number) =>
    height > corner + half ? height - corner : half * past(height, corner, half) ** 2;
  const blowsFrom = (height: number) =>
    flight.wind.offRunway +
    (flight.wind.veer / 294.8) * (behind(height, 10, 0.5) - behind(height, 304.8, 15.24));

  /** Drift [along, across]. */
  const wind = (height: number): [number, number] => {
    const speed = flight.wind.speed * (carried(height) / 10) ** flight.wind.exponent;
    return [-speed * Math.cos(blowsFrom(height)), -speed * Math.sin(blowsFrom(height))];
  };

  /** The derivative of the power law and of the turning, m/s for each metre. */
  const windChange = (height: number): [number, number] => {
    const growth = (flight.wind.exponent / carried(height)) * Math.min(1, Math.max(0, height - 1.5));
    const [along, across] = wind(height);
    return [along * growth - spin(height) * across, across * growth + spin(height) * along];
  };
  /** d(ln sqrt(rho0/rho))/dh of an atmosphere whose temperature falls evenly. */
  const thinning = (height: number) =>
    ((g / (gas * lapse) - 1) / 2) * (lapse / (fieldTemperature - lapse * height));
  /** What the air velocity loses to the wind and the thinning air on the way down, for each metre, over g. */
  const worthOfHeight = (tas: number, horizontal: number, heading: number, height: number) => {
    const [along, across] = windChange(height);
    const shear = horizontal * (Math.cos(heading) * along + Math.sin(heading) * across);
    return 1 + (tas * tas * thinning(height) + shear) / g;
  };

  const gamma0 = Math.atan(1 / bestGlide.ratio);
  const dragShare = (speed: number, n: number, induced: number) => {
    const u = speed / bestGlide.speed;
    return (
      (Math.cos(gamma0) / (2 * bestGlide.ratio)) * (u ** 2 + (induced * (n / Math.cos(gamma0)) ** 2) / u ** 2)
    );
  };
  /** Glide angle with n = cos(gamma)/cos(bank), by repeating the formula until it no longer changes. */
  const glideAngle = (speed: number, bank: number) => {
    let angle = gamma0;
    for (let i = 0; i < 200; i++) {
      const next = Math.asin(dragShare(speed, Math.cos(angle) / Math.cos(bank), 1));
      if (Math.abs(next - angle) < 1e-15) break;
      angle = next;
    }
    return angle;
  };

  /** The published reductions of FAA-H-8083-25 as a Lagrange parabola in the logarithms. */
  const nodes = [
    [0.1, 0.476],
    [0.25, 0.235],
    [1, 0.014],
  ].map(([ratio, reduction]) => [Math.log(ratio!), Math.log(-Math.log(reduction!))] as const);
  const inducedLeft = (height: number) => {
    const x = Math.log((Math.max(height, 0) + flight.wingAboveWheels) / flight.span);
    let y = 0;
    nodes.forEach(([xi, yi], i) => {
      const weight = nodes.reduce(
        (product, [xj], j) => (i === j ? product : (product * (x - xj)) / (xi - xj)),
        1,
      );
      y += yi * weight;
    });
    return 1 - Math.exp(-Math.exp(y));
  };

  /** The heading that makes good a track, from the triangle of velocities. */
  const headingFor = (track: number, horizontal: number, height: number) => {
    const [along, across] = wind(height);
    return track - Math.asin((across * Math.cos(track) - along * Math.sin(track)) / horizontal);
  };

  const onLine =
    (
      track: number,
      acceleration: (angle: number, trueOverEquivalent: number) => number,
      held = true,
    ): Rates =>
    (_time, y) => {
      const speed = y[V]!;
      const angle = glideAngle(speed, 0);
      const factor = trueOver(y[H]!);
      const tas = speed * factor;
      const horizontal = tas * Math.cos(angle);
      const heading = headingFor(track, horizontal, y[H]!);
      const [along, across] = wind(y[H]!);
      const rate = acceleration(angle, factor);
      const worth = worthOfHeight(tas, horizontal, heading, y[H]!);
      const needed = tas * Math.sin(angle) + (tas * factor * rate) / g;
      const sink = held ? needed / worth : needed;
      return [
        horizontal * Math.cos(heading) + along,
        horizontal * Math.sin(heading) + across,
        -sink,
        0,
        0,
        held ? rate : (g * (sink * worth - tas * Math.sin(angle))) / (tas * factor),
        0,
      ];
    };
  const steady = () => 0;
  const speedingUp = () => 0.5;
  const slowingDown = (angle: number, trueOverEquivalent: number) =>
    -Math.min(0.5, (g * Math.sin(angle)) / (2 * trueOverEquivalent));

  const inTurn =
    (roll: number): Rates =>
    (_time, y) => {
      const tas = y[V]! * trueOver(y[H]!);
      const angle = glideAngle(y[V]!, y[PHI]!);
      const [along, across] = wind(y[H]!);
      const worth = worthOfHeight(tas, tas * Math.cos(angle), y[PSI]!, y[H]!);
      return [
        tas * Math.cos(angle) * Math.cos(y[PSI]!) + along,
        tas * Math.cos(angle) * Math.sin(y[PSI]!) + across,
        (-tas * Math.sin(angle)) / worth,
        (g * Math.tan(y[PHI]!)) / tas,
        roll,
        0,
        0,
      ];
    };

  const pulling: Rates = (_time, y) => {
    const tas = y[V]! * trueOver(0);
    const horizontal = tas * Math.cos(y[GAMMA]!);
    const heading = headingFor(0, horizontal, y[H]!);
    const [along, across] = wind(y[H]!);
    const drag = dragShare(y[V]!, flight.pull, inducedLeft(y[H]!));
    const [growAlong, growAcross] = windChange(y[H]!);
    const sink = tas * Math.sin(y[GAMMA]!);
    const change = Math.cos(heading) * growAlong + Math.sin(heading) * growAcross;
    const lost = -sink * Math.cos(y[GAMMA]!) * change;
    return [
      horizontal * Math.cos(heading) + along,
      horizontal * Math.sin(heading) + across,
      -tas * Math.sin(y[GAMMA]!),
      0,
      0,
      (g * (Math.sin(y[GAMMA]!) - drag) - lost) / trueOver(0),
      (-g * (flight.pull - Math.cos(y[GAMMA]!))) / tas,
    ];
  };

  const floating =
    (height: number, speed: number): Rates =>
    (_time, y) => {
      const factor = trueOver(0);
      const tas = y[V]! * factor;
      const heading = headingFor(0, tas, y[H]!);
      const [along, across] = wind(y[H]!);
      const metresPerSpeed = height / (factor * (speed - flight.touchdownSpeed));
      // Energy: what the drag takes comes from the speed and from the height that goes with it.
      const [growAlong, growAcross] = windChange(y[H]!);
      const change = Math.cos(heading) * growAlong + Math.sin(heading) * growAcross;
      const slowing =
        (g * dragShare(y[V]!, 1, inducedLeft(y[H]!))) /
        (1 + (g * metresPerSpeed) / tas + metresPerSpeed * change);
      return [
        tas * Math.cos(heading) + along,
        tas * Math.sin(heading) + across,
        -metresPerSpeed * slowing,
        0,
        0,
        -slowing / factor,
        0,
      ];
    };

  let state = [0, side * flight.spacing, flight.height, 0, 0, bestGlide.speed, 0];
  let time = 0;

  const solved = (rates: Rates, duration: number) => {
    const solver = new OdexSolver(state.length);
    solver.absoluteTolerance = 1e-10;
    solver.relativeTolerance = 1e-10;
    return solver.solve(rates, 0, state, duration).y;
  };

  /** Flies on until `left` is used up: steps of two seconds, the last one found by bisection. */
  const fly = (rates: Rates, left: (y: readonly number[]) => number) => {
    if (left(state) <= 0) return;
    for (let steps = 0; left(solved(rates, 2)) > 0; steps++) {
      if (steps > 500) throw new Error('a leg does not end');
      state = solved(rates, 2);
      time += 2;
    }
    let [low, high] = [0, 2];
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (left(solved(rates, middle)) > 0) low = middle;
      else high = middle;
    }
    state = solved(rates, high);
    time += high;
  };

  const passed = (rates: Rates): Passed => {
    const [vx, vy] = rates(0, state) as [number, number];
    return {
      time,
      along: state[X]!,
      across: state[Y]!,
      height: state[H]!,
      groundspeed: Math.hypot(vx, vy),
    };
  };

  /** What is left of a turn to a track: the heading wanted there, less what the roll-out itself turns. */
  const turnLeft = (track: number, rollsOut: boolean) => (y: readonly number[]) => {
    const tas = y[V]! * trueOver(y[H]!);
    const wanted = headingFor(track, tas * Math.cos(glideAngle(y[V]!, 0)), y[H]!);
    const rollOut = rollsOut ? (-g * Math.log(Math.cos(y[PHI]!))) / (tas * flight.rollRate) : 0;
    return side * (wanted - y[PSI]!) - rollOut;
  };

  const turnTo = (track: number, rollsOut: boolean) => {
    const left = turnLeft(track, rollsOut);
    fly(inTurn(side * flight.rollRate), (y) => Math.min(flight.bank - side * y[PHI]!, left(y)));
    fly(inTurn(0), left);
    if (!rollsOut) return;
    fly(inTurn(-side * flight.rollRate), (y) => side * y[PHI]!);
    state[PHI] = 0;
  };

  const holdHeading = (track: number) => {
    const tas = state[V]! * trueOver(state[H]!);
    state[PSI] = headingFor(track, tas * Math.cos(glideAngle(state[V]!, 0)), state[H]!);
  };

  // The legs, each on its own ground line. Headings unwind to 0, the landing direction.
  const [downwindTrack, baseTrack] = [-side * Math.PI, (-side * Math.PI) / 2];
  fly(onLine(downwindTrack, steady), (y) => y[X]! + flight.pastAbeam);
  holdHeading(downwindTrack);
  const baseTurn = passed(onLine(downwindTrack, steady));

  const { lead } = flight;
  turnTo(baseTrack, lead !== undefined);
  if (lead !== undefined) {
    fly(onLine(baseTrack, steady), (y) => side * y[Y]! - lead);
    holdHeading(baseTrack);
  }
  const finalTurn = passed(onLine(baseTrack, steady));
  turnTo(0, true);
  const final = passed(onLine(0, steady));

  const aboveRoundOut = (y: readonly number[]) => y[H]! - flight.roundOutHeight;
  const faster = flight.approachSpeed > state[V]!;
  const toGo = (y: readonly number[]) => (faster ? 1 : -1) * (flight.approachSpeed - y[V]!);
  fly(onLine(0, faster ? speedingUp : slowingDown), (y) => Math.min(aboveRoundOut(y), toGo(y)));
  // Below the screen height of 50 ft the nose stays where it is.
  fly(onLine(0, steady), (y) => y[H]! - Math.max(flight.roundOutHeight, 15.24));
  const last = onLine(0, steady, flight.roundOutHeight > 15.24);
  fly(last, aboveRoundOut);
  const rates = last(0, state);
  const aimAlong = state[X]! + (state[H]! * rates[X]!) / -rates[H]!;
  const aimPoint = { time: Number.NaN, along: aimAlong, across: 0, height: 0, groundspeed: Number.NaN };

  state[GAMMA] = Math.asin(-rates[H]! / (state[V]! * trueOver(state[H]!)));
  fly(pulling, (y) => y[GAMMA]!);
  const landing = floating(state[H]!, state[V]!);
  fly(landing, (y) => y[V]! - flight.touchdownSpeed);
  return {
    'base-turn': baseTurn,
    'final-turn': finalTurn,
    final,
    'aim-point': aimPoint,
    touchdown: passed(landing),
  };
}
