import { roundDownTo, roundUpTo } from '../../../units/rounding.ts';
import { headwind } from '../../air/wind.ts';
import { landingRun } from '../../aircraft/landing-run.ts';
import { atSpot } from '../../flying/fly-pattern.ts';
import type { TrackSample } from '../../terms/plan.ts';
import type { Examined, Found } from './examined.ts';

/** A touchdown off the runway, or a landing roll that does not end on it. */
export function groundCautions(examined: Examined): Found[] {
  const { runway, track } = examined;
  const touchdown = track.at(-1)!;
  // At the spot is at the spot: a centimetre is not to cost a step of the page.
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
  const metres = roundUpTo(off, off < 100 ? 1 : 10);
  const isShort = off === outside.short;
  const where =
    off === outside.beside ? 'beside' : isShort ? 'before the landing end of' : 'beyond the end of';
  return {
    code: 'off-runway',
    message: `The wheels touch ${metres} m ${where} the runway.`,
    value: off,
    limit: 0,
    source: `airfield data: runway ${runway.name}`,
    at: 'touchdown',
    remedy:
      off === outside.beside
        ? 'It has to end on the centreline: less wind across, or another approach.'
        : off > runway.length / 2
          ? 'It has to end on the runway: another height, or less wind.'
          : `With the spot ${metres} m ${isShort ? 'farther in' : 'nearer the landing end'}, the wheels would touch on the runway.`,
  };
}

function landingDistance(
  touchdown: TrackSample,
  left: number,
  { aircraft, runway, flown }: Examined,
): Found[] {
  // A flight that touches down faster than planned rolls farther; one that is dropped in slower is no sound landing.
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
  const lacking = roundUpTo(run - left, 10);
  const behind = headwind(flown.surfaceWind, runway.heading) < 0;
  const back = roundUpTo(landingRun({ ...rolling, heading: runway.heading + Math.PI }), 10);
  const ways = [
    ...(lacking <= runway.spot
      ? [`It would fit with the spot ${lacking} m nearer the landing end of the runway.`]
      : [`It would fit with ${roundUpTo(run, 10)} m of runway left at the touchdown.`]),
    ...(behind ? [`Landed the other way, the roll would be ${back} m.`] : []),
  ];
  return [
    {
      code: 'landing-distance',
      message: `The landing roll is ${roundUpTo(run, 10)} m in this wind and air, longer than the ${roundDownTo(left, 10)} m of runway left after the touchdown.`,
      value: run,
      limit: left,
      source: `aircraft and airfield data: ${aircraft.source}; brought to this wind, air and mass by FAA-H-8083-25 and CAT.POL.A.330(c)`,
      at: 'touchdown',
      remedy: ways.join(' '),
    },
  ];
}
