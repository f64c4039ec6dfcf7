import { landingRunOf } from '../../flight/aircraft/landing-run.ts';
import type { FaultPlan } from '../../flight/faults/fault-plan.ts';
import type { FaultEnd, FaultFlown, FaultLanding } from '../../flight/terms/fault.ts';
import { roundTo } from '../../units/rounding.ts';
import { cautionSentence } from '../cautions/caution-words.ts';
import { distanceStep, formatDistance } from '../figures/format.ts';
import { lowerFirst } from '../figures/letter-case.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatSafeDistance } from '../figures/safe-rounding.ts';
import { missText } from '../keys/place-words.ts';

/** m: less than this, a distance is printed as none. */
export const printedDistance = 5;

const howItEnds: Readonly<Record<FaultLanding['how'], string>> = {
  touched: 'The wheels touch',
  struck: 'The wheels strike',
  dropped: 'It drops',
  'no-landing': 'It meets the ground',
};

/** Where a flight ends, and whether there is a runway: `The wheels touch 360 m short, 60 m before the runway.` */
export function endWords(flight: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  const { end, landing } = flight;
  const off = offTheRunway(end, plan, units);
  // Just off the side, a distance rounded down would still be on the runway.
  const isNearEdge = roundTo(Math.abs(end.across), distanceStep(units)) <= plan.request.runway.width / 2;
  const where = placeWords(end, units, off !== '' && isNearEdge ? roundedUp : formatDistance);
  const met = obstaclesMet(flight, plan, units);
  const ends = `${howItEnds[landing.how]} ${where}${off === '' ? '' : `, ${off}`}.`;
  return [
    ...met,
    met.length > 0 ? `Were it not there: ${lowerFirst(ends)}` : ends,
    ...(off === '' ? rollWords(flight, units) : []),
  ].join(' ');
}

const roundedUp = (metres: number, units: PageUnits) => formatSafeDistance(metres, 'up', units);

/** The roll is the one for the flight's own wind and for the speed at which it touches down. */
function rollWords({ cautions }: FaultFlown, units: PageUnits): string[] {
  return cautions
    .filter(({ code }) => code === 'landing-distance')
    .map(
      ({ value }) => `The landing roll of ${roundedUp(value, units)} no longer fits: it runs off the end.`,
    );
}

/** What follows an obstacle on the path is not flown; the caution says how far below its top. */
function obstaclesMet({ cautions }: FaultFlown, { request }: FaultPlan, units: PageUnits): string[] {
  return cautions
    .filter((caution) => caution.code === 'obstacle-clearance' && caution.how === 'met')
    .map((caution) => cautionSentence(caution, request, units));
}

/** m: the landing roll in the wind and air of the plan, from its touchdown speed or from a faster one (m/s EAS). */
export function rollOf({ request, resolved: { conditions, flown } }: FaultPlan, eas = 0): number {
  const day = { ...conditions, flown, runway: request.runway };
  return landingRunOf(day, Math.max(eas, flown.touchdownSpeed));
}

/** m of runway left after the landing roll; negative where it does not fit. */
export function leftAtStop(
  { along, eas }: Pick<FaultEnd, 'along'> & Partial<Pick<FaultEnd, 'eas'>>,
  plan: FaultPlan,
): number {
  const { length, spot } = plan.request.runway;
  return length - spot - along - rollOf(plan, eas);
}

/** Where a flight ends, from the spot: `250 m short`, `40 m right of the centreline`, `at the spot`. */
export function placeWords(
  { along, across }: Pick<FaultEnd, 'along' | 'across'>,
  units: PageUnits,
  off = formatDistance,
): string {
  const parts = [
    ...(Math.abs(along) < printedDistance ? [] : [missText(along, units)]),
    ...(Math.abs(across) < printedDistance
      ? []
      : [`${off(Math.abs(across), units)} ${across < 0 ? 'left' : 'right'} of the centreline`]),
  ];
  return parts.join(' and ') || 'at the spot';
}

/** A miss smaller than the page can print is still a miss: rounded up. */
function offTheRunway(end: FaultEnd, plan: FaultPlan, units: PageUnits): string {
  const { runway } = plan.request;
  const fromLandingEnd = runway.spot + end.along;
  const before = -fromLandingEnd;
  const beyond = fromLandingEnd - runway.length;
  if (before > 0) return `${offItsEnd(before, units)} before the runway begins`;
  if (beyond > 0) return `${offItsEnd(beyond, units)} beyond the end of the runway`;
  return besideRunway(end, plan) ? 'off the side of the runway' : '';
}

/** Off the runway: never by less than it is. */
const offItsEnd = (metres: number, units: PageUnits) => roundedUp(metres, units);

export const besideRunway = (
  { across }: Pick<FaultEnd, 'across'>,
  { request: { runway } }: Pick<FaultPlan, 'request'>,
) => Math.abs(across) > runway.width / 2;
