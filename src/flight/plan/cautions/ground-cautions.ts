import { headwind } from '../../air/wind.ts';
import { landingRun } from '../../aircraft/landing-run.ts';
import { atSpot } from '../../flying/fly-pattern.ts';
import type { Found } from '../../terms/caution.ts';
import type { TrackSample } from '../../terms/plan.ts';
import type { Examined } from './examined.ts';

/** A touchdown off the runway, or a landing roll that does not end on it. */
export function groundCautions(examined: Examined): Found[] {
  const { runway, track } = examined;
  const touchdown = track.at(-1)!;
  // At the spot is at the spot: a centimetre must not cost a step of the page.
  const along = Math.abs(touchdown.along) <= atSpot ? 0 : touchdown.along;
  const fromLandingEnd = runway.spot + along;
  const outside = {
    short: -fromLandingEnd,
    long: fromLandingEnd - runway.length,
    beside: Math.abs(touchdown.across) - runway.width / 2,
  };
  const off = Math.max(outside.short, outside.long, outside.beside);
  return off > 0
    ? [offRunway(off, outside, examined)]
    : landingDistance(touchdown, runway.length - fromLandingEnd, examined);
}

function offRunway(
  off: number,
  outside: { readonly short: number; readonly long: number; readonly beside: number },
  { runway }: Examined,
): Found {
  const where = off === outside.beside ? 'beside' : off === outside.short ? 'short' : 'long';
  const isMovable = where !== 'beside' && off <= runway.length / 2;
  return {
    code: 'off-runway',
    where,
    value: off,
    limit: 0,
    source: 'airfield',
    at: 'touchdown',
    remedy: isMovable ? { spot: where === 'short' ? 'farther-in' : 'nearer-end', by: off } : undefined,
  };
}

function landingDistance(
  touchdown: TrackSample,
  left: number,
  { aircraft, runway, flown }: Examined,
): Found[] {
  // A flight that touches down faster than planned rolls farther; one that is dropped in slower is not a sound
  // landing.
  const eas = Math.max(touchdown.phase === 'hold-off' ? touchdown.eas : 0, flown.touchdownSpeed);
  const rolling = {
    aircraft,
    tas: (eas * touchdown.tas) / touchdown.eas,
    wind: flown.surfaceWind,
    gust: flown.gust,
    heading: runway.heading,
  };
  const run = landingRun(rolling);
  if (run <= left) return [];
  const behind = headwind(flown.surfaceWind, runway.heading) < 0;
  const otherWay = behind ? landingRun({ ...rolling, heading: runway.heading + Math.PI }) : undefined;
  return [
    {
      code: 'landing-distance',
      value: run,
      limit: left,
      source: 'landing-roll',
      at: 'touchdown',
      remedy: { otherWay },
    },
  ];
}
