import { metresPerFoot } from '../../units/factors.ts';
import { cosine, sine } from '../numerics/steady-math.ts';
import type { SurfaceWind, WindAtHeight, WindProfileKind } from '../terms/plan.ts';

/** Height of the reported surface wind, m (WMO-No. 8, Part I, chapter 5). */
export const surfaceWindHeight = 10;

/** The power law is not continued below this height, m: grass and gusts rule there. */
export const lowestProfileHeight = 2;

/**
 * m: where the wind's change with height would jump (the foot of the power law, a height at which a wind is given)
 * the corner is rounded, this far to each side. A step of a flight is then as accurate there as anywhere, and the
 * change is that of the wind itself.
 */
export function roundedAbout(height: number): number {
  return Math.max(0.5, height / 20);
}

/** m: a wind that turns with height turns evenly from 10 m up to here (common practice, no source). */
export const windTurnsUpTo = 1000 * metresPerFoot;

/** m: the heights at which a wind begins to turn and stops turning. */
export const turningBends: readonly number[] = [surfaceWindHeight, windTurnsUpTo];

/** Exponent of the seventh-root profile for neutral air over open country (AMS Glossary, "power-law profile"). */
export const seventhRoot = 1 / 7;

/** The wind in the spot frame, m/s: where it carries the aircraft, along the landing direction and to the right. */
export interface Drift {
  along: number;
  across: number;
}

/** The wind at a height, and how fast it changes with height: m/s for each metre up. */
export interface Wind extends Drift {
  alongShear: number;
  acrossShear: number;
}

/** A wind to be filled in. */
export const stillAir = (): Wind => ({ along: 0, across: 0, alongShear: 0, acrossShear: 0 });

/** Fills `out` with the wind at a height above the field in m. */
export type WindField = (height: number, out: Wind) => void;

/** The drift that a wind gives over a runway with this heading (rad true). */
export function drift(wind: SurfaceWind, runwayHeading: number): Drift {
  const offRunway = wind.from - runwayHeading;
  return { along: -wind.speed * cosine(offRunway), across: -wind.speed * sine(offRunway) };
}

/** Component of a wind against the landing direction, m/s; negative for a tailwind. */
export function headwind(wind: SurfaceWind, runwayHeading: number): number {
  return wind.speed * cosine(wind.from - runwayHeading);
}

/** Component of a wind across the runway, m/s; positive where it comes from the right. */
export function crosswind(wind: SurfaceWind, runwayHeading: number): number {
  return wind.speed * sine(wind.from - runwayHeading);
}

/** What the wind profile is made from. */
export interface WindProfile {
  readonly kind: WindProfileKind;
  /** For `power`. */
  readonly exponent: number;
  /** For `power`, rad: how far the wind turns clockwise from 10 m up to 1,000 ft. Left out, it does not. */
  readonly veer?: number | undefined;
  /** For `layers`: at least one, heights above the field rising. */
  readonly layers: readonly WindAtHeight[];
}

/**
 * The wind by height, in the spot frame. `power`: the surface wind times (height/10 m)^exponent, not below 2 m,
 * turned by the veer. `uniform`: the surface wind, speed and direction, at every height, whatever the veer. `layers`:
 * vectors, linear in the logarithm of height between the given ones, constant below the first and above the last.
 */
export function windField(surface: SurfaceWind, profile: WindProfile, runwayHeading: number): WindField {
  const atSurface = drift(surface, runwayHeading);
  if (profile.kind === 'layers') return layeredField(profile.layers, runwayHeading);
  if (profile.kind === 'uniform' || surface.speed === 0) {
    return (_height, out) => {
      out.along = atSurface.along;
      out.across = atSurface.across;
      out.alongShear = 0;
      out.acrossShear = 0;
    };
  }
  const field = powerField(atSurface, profile.exponent);
  return profile.veer ? turningWind(field, profile.veer) : field;
}

function powerField(atSurface: Drift, exponent: number): WindField {
  const rounded = roundedAbout(lowestProfileHeight);
  return (height, out) => {
    const above = height - lowestProfileHeight;
    const carried = lowestProfileHeight + ramp(above, rounded);
    const gain = Math.exp(exponent * Math.log(carried / surfaceWindHeight));
    out.along = atSurface.along * gain;
    out.across = atSurface.across * gain;
    const growth = (exponent / carried) * rise(above, rounded);
    out.alongShear = out.along * growth;
    out.acrossShear = out.across * growth;
  };
}

const turnsOver = windTurnsUpTo - surfaceWindHeight;
const [turnsRound, endsRound] = [roundedAbout(surfaceWindHeight), roundedAbout(windTurnsUpTo)];

/** rad: how far a wind that turns clockwise by `veer` up to 1,000 ft has turned at a height (m). */
export function turnedAt(height: number, veer: number): number {
  const risen = ramp(height - surfaceWindHeight, turnsRound) - ramp(height - windTurnsUpTo, endsRound);
  return (veer * risen) / turnsOver;
}

/**
 * The wind turned clockwise, as seen from above, by up to `veer` (rad): evenly from 10 m to 1,000 ft, and above that
 * as at 1,000 ft.
 */
export function turningWind(wind: WindField, veer: number): WindField {
  const rate = veer / turnsOver;
  return (height, out) => {
    wind(height, out);
    const angle = turnedAt(height, veer);
    const turning =
      rate * (rise(height - surfaceWindHeight, turnsRound) - rise(height - windTurnsUpTo, endsRound));
    const [c, s] = [cosine(angle), sine(angle)];
    const { along, across, alongShear, acrossShear } = out;
    out.along = c * along - s * across;
    out.across = s * along + c * across;
    out.alongShear = c * alongShear - s * acrossShear - turning * out.across;
    out.acrossShear = s * alongShear + c * acrossShear + turning * out.along;
  };
}

function layeredField(layers: readonly WindAtHeight[], runwayHeading: number): WindField {
  const rows = layers.map((layer) => {
    const height = Math.max(layer.height, lowestProfileHeight);
    return {
      level: Math.log(height),
      rounded: roundedAbout(height) / height,
      ...drift(layer, runwayHeading),
    };
  });
  const first = rows[0]!;
  // The change of the wind between two layers begins at the lower one and ends at the upper one.
  const bends = rows.slice(1).flatMap((to, i) => {
    const from = rows[i]!;
    const gap = to.level - from.level;
    const [along, across] = [(to.along - from.along) / gap, (to.across - from.across) / gap];
    return [
      { ...from, along, across },
      { ...to, along: -along, across: -across },
    ];
  });
  return (height, out) => {
    const lowest = Math.max(height, lowestProfileHeight);
    const level = Math.log(lowest);
    out.along = first.along;
    out.across = first.across;
    out.alongShear = 0;
    out.acrossShear = 0;
    for (const bend of bends) {
      const above = level - bend.level;
      const change = ramp(above, bend.rounded);
      const growth = rise(above, bend.rounded) / lowest;
      out.along += bend.along * change;
      out.across += bend.across * change;
      out.alongShear += bend.along * growth;
      out.acrossShear += bend.across * growth;
    }
  };
}

/** 0 below a corner and rising with `x` above it, rounded this far to each side. */
function ramp(x: number, rounded: number): number {
  if (Math.abs(x) >= rounded) return Math.max(0, x);
  return (x + rounded) ** 2 / (4 * rounded);
}

/** How steeply the ramp rises: 0 below the corner, 1 above. */
function rise(x: number, rounded: number): number {
  return Math.min(1, Math.max(0, 0.5 + x / (2 * rounded)));
}

/** A field's wind at a height, as the direction it blows from (rad true, 0 to 2 pi) and its speed. */
export function windAt(field: WindField, height: number, runwayHeading: number): WindAtHeight {
  const out = stillAir();
  field(height, out);
  const speed = Math.hypot(out.along, out.across);
  const from = runwayHeading + Math.atan2(-out.across, -out.along);
  return { height, from: speed > 0 ? positiveAngle(from) : 0, speed };
}

/** An angle brought into 0 to 2 pi. */
export function positiveAngle(angle: number): number {
  const turn = 2 * Math.PI;
  return ((angle % turn) + turn) % turn;
}

/** The wind triangle: the heading and groundspeed that hold a track at an airspeed in a wind. */
export interface Triangle {
  /** rad, in the frame of `track`. */
  readonly heading: number;
  /** m/s along the track; not positive where the wind is too strong to make headway. */
  readonly groundspeed: number;
  /** False where the wind across the track is stronger than the airspeed. */
  readonly holds: boolean;
}

/**
 * Solves the wind triangle. `track` in rad, `airspeed` horizontal, in m/s; the wind's drift in the same frame.
 * Where the track cannot be held, the heading is straight into the wind across it.
 */
export function windTriangle(track: number, airspeed: number, wind: Drift): Triangle {
  const heading = track + crab(track, airspeed, wind);
  const onTrack = wind.along * cosine(track) + wind.across * sine(track);
  const offTrack = wind.across * cosine(track) - wind.along * sine(track);
  return {
    heading,
    groundspeed: airspeed * cosine(heading - track) + onTrack,
    holds: Math.abs(offTrack) < airspeed,
  };
}

/** The angle, rad, by which the heading is laid off from the track to allow for drift; positive to the right. */
export function crab(track: number, airspeed: number, wind: Drift): number {
  const offTrack = wind.across * cosine(track) - wind.along * sine(track);
  return -Math.asin(Math.min(1, Math.max(-1, offTrack / airspeed)));
}
