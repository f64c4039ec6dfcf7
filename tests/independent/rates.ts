import { drag, inducedLeft, sinGlide } from './polar.ts';
import { type BestGlide, g, noWind, type World } from './world.ts';

/*
 * The equations of motion. State: along, across, height (m), heading and bank (rad, right positive), EAS (m/s), path
 * below the horizon (rad), track of a held circle (rad).
 */
export const X = 0;
export const Y = 1;
export const H = 2;
export const PSI = 3;
export const BANK = 4;
export const EAS = 5;
export const PATH = 6;
export const TRACK = 7;
export const size = 8;
export type State = Float64Array;
export type Rates = (state: State, out: State) => void;

/** m/s EAS per second. */
const speedRate = 0.5;

/** The sink is at most this many times that of the steady glide: beyond that, the airspeed goes. */
const mostSink = 2;

type Descending = Record<'height' | 'eas' | 'sinGamma' | 'shear' | 'commanded', number>;

/**
 * Sink and rate of EAS. Along the air path, with V_h the horizontal air velocity and `shear` = V_h . dW/dh, dTAS/dt =
 * (g/TAS) (sink (1 + shear/g) - TAS sin(gamma)). Where the airspeed is held, or changed as commanded, the nose makes
 * the sink that does it, with the thinning of the air counted: sink (1 + (TAS dTAS/dh + shear)/g) = TAS sin(gamma) +
 * (TAS/g) times the commanded rate. Where the nose stays (`held` false), the sink is that of still air and the
 * airspeed follows.
 */
function descent(world: World, { height, eas, sinGamma, shear, commanded }: Descending, held: boolean) {
  const thin = world.thinness(height);
  const thinning = world.thinning(height);
  const tas = eas * thin;
  const inStillAir = tas * sinGamma;
  const asked = inStillAir + (tas * thin * commanded) / g;
  const worth = 1 + (tas * tas * thinning + shear) / g;
  if (held && worth * mostSink >= 1) return { sink: asked / worth, change: commanded };
  const sink = held ? mostSink * asked : asked;
  const gain = (g / tas) * (sink * (1 + shear / g) - inStillAir);
  // TAS = thinness x EAS, and the thinness falls with the height.
  return { sink, change: gain / thin + sink * eas * thinning };
}

/**
 * Straight along a ground track with drift allowed for; `change` is 1 while speeding up, -1 while slowing, else 0. A
 * track that cannot be held gives rates that are NaN.
 */
export function alongTrack(
  world: World,
  polar: BestGlide,
  track: number,
  change: -1 | 0 | 1,
  held = true,
): Rates {
  const [cos, sin] = [Math.cos(track), Math.sin(track)];
  const wind = noWind();
  return (state, out) => {
    const height = state[H]!;
    const eas = state[EAS]!;
    const thin = world.thinness(height);
    const tas = eas * thin;
    const sinGamma = sinGlide(polar, eas, 0);
    world.wind(height, wind);
    const side = wind.across * cos - wind.along * sin;
    const ahead = Math.sqrt(tas * tas * (1 - sinGamma * sinGamma) - side * side);
    const ground = ahead + wind.along * cos + wind.across * sin;
    // The air velocity is `ahead` on the track and the drift's opposite across it.
    const shear =
      ahead * (wind.alongPerMetre * cos + wind.acrossPerMetre * sin) -
      side * (wind.acrossPerMetre * cos - wind.alongPerMetre * sin);
    // Slowing gives back at most half of the sink.
    const rate =
      change === 0 ? 0 : change > 0 ? speedRate : -Math.min(speedRate, (g * sinGamma) / (2 * thin));
    out.fill(0);
    out[X] = ground * cos;
    out[Y] = ground * sin;
    const falling = descent(world, { height, eas, sinGamma, shear, commanded: rate }, held);
    out[H] = -falling.sink;
    out[EAS] = falling.change;
  };
}

/** Turning through the air with the bank changing at a rate. */
export function turning(world: World, rollRate: number): Rates {
  const wind = noWind();
  return (state, out) => {
    const height = state[H]!;
    const eas = state[EAS]!;
    const tas = eas * world.thinness(height);
    const sinGamma = sinGlide(world.glide, eas, state[BANK]!);
    const level = tas * Math.sqrt(1 - sinGamma * sinGamma);
    const x = level * Math.cos(state[PSI]!);
    const y = level * Math.sin(state[PSI]!);
    world.wind(height, wind);
    out.fill(0);
    out[X] = x + wind.along;
    out[Y] = y + wind.across;
    const shear = x * wind.alongPerMetre + y * wind.acrossPerMetre;
    const { sink, change } = descent(world, { height, eas, sinGamma, shear, commanded: 0 }, true);
    out[H] = -sink;
    out[EAS] = change;
    out[PSI] = (g * Math.tan(state[BANK]!)) / tas;
    out[BANK] = rollRate;
  };
}

/** The bank with which a held circle turns the heading as it must, and what goes with it. */
export function onCircle(world: World, radius: number, state: State) {
  const wind = noWind();
  const [track, height, eas] = [state[TRACK]!, state[H]!, state[EAS]!];
  const [cos, sin] = [Math.cos(track), Math.sin(track)];
  world.wind(height, wind);
  const tas = eas * world.thinness(height);
  const drift = wind.across * cos - wind.along * sin;
  let bank = 0;
  let sinGamma = 0;
  let ahead = 0;
  let ground = 0;
  for (let i = 0; i < 60; i++) {
    sinGamma = sinGlide(world.glide, eas, bank);
    ahead = Math.sqrt(tas * tas * (1 - sinGamma * sinGamma) - drift * drift);
    ground = ahead + wind.along * cos + wind.across * sin;
    // Heading = track - asin(drift/horizontal): in a uniform wind it turns ground/ahead times as fast as the track.
    const next = Math.atan((tas * ground * ground) / (g * radius * ahead));
    const settled = Math.abs(next - bank) < 1e-11;
    bank = next;
    if (settled) break;
  }
  const shear =
    ahead * (wind.alongPerMetre * cos + wind.acrossPerMetre * sin) -
    drift * (wind.acrossPerMetre * cos - wind.alongPerMetre * sin);
  const { sink, change } = descent(world, { height, eas, sinGamma, shear, commanded: 0 }, true);
  return { cos, sin, ground, bank, sink, change, heading: track - Math.atan2(drift, ahead) };
}

export function roundCircle(world: World, radius: number, side: 1 | -1): Rates {
  return (state, out) => {
    const { cos, sin, ground, sink, change } = onCircle(world, radius, state);
    out.fill(0);
    out[X] = ground * cos;
    out[Y] = ground * sin;
    out[H] = -sink;
    out[EAS] = change;
    out[TRACK] = (side * ground) / radius;
  };
}

/** Along the runway near the ground: how fast over it, and how much speed the wind takes for each metre lost. */
function alongRunway(world: World, height: number, level: number, wind = noWind()) {
  world.wind(height, wind);
  const ahead = Math.sqrt(level * level - wind.across * wind.across);
  const windPerMetre = (ahead * wind.alongPerMetre - wind.across * wind.acrossPerMetre) / level;
  return { ground: ahead + wind.along, windPerMetre };
}

const induced = (world: World, height: number) =>
  inducedLeft((Math.max(0, height) + world.wingAboveWheels) / world.span);

/** The pull at a constant load factor; wind that changes along the path is speed lost or gained. */
export function roundingOut(world: World, load: number): Rates {
  return (state, out) => {
    const [height, eas, path] = [state[H]!, state[EAS]!, state[PATH]!];
    const thin = world.thinness(0);
    const tas = eas * thin;
    const { ground, windPerMetre } = alongRunway(world, height, tas * Math.cos(path));
    const sink = tas * Math.sin(path);
    const lost = g * drag(world.glide, eas, load, induced(world, height));
    out.fill(0);
    out[X] = ground;
    out[H] = -sink;
    // dW/dt = -sink dW/dh, and its part along the air path is what the airspeed loses.
    out[EAS] = (g * Math.sin(path) - lost + sink * windPerMetre * Math.cos(path)) / thin;
    out[PATH] = (g * (Math.cos(path) - load)) / tas;
  };
}

/** Hold-off: height goes with the speed above touchdown, `perSpeed` metres for each m/s TAS. */
export function holdingOff(world: World, perSpeed: number): Rates {
  return (state, out) => {
    const [height, eas] = [state[H]!, state[EAS]!];
    const thin = world.thinness(0);
    const tas = eas * thin;
    const { ground, windPerMetre } = alongRunway(world, height, tas);
    const lost = g * drag(world.glide, eas, 1, induced(world, height));
    // V dV + g dh + V dW = -g D V dt, with dh = perSpeed dV.
    const worth = 1 + (g * perSpeed) / tas + perSpeed * windPerMetre;
    // A wind that takes more speed than that: no such hold-off can be flown.
    const slowing = worth > 0 ? lost / worth : Number.NaN;
    out.fill(0);
    out[X] = ground;
    out[H] = -perSpeed * slowing;
    out[EAS] = -slowing / thin;
  };
}
