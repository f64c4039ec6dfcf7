import { metresPerFoot } from '../../units/factors.ts';
import { sinOfGlide } from '../aircraft/glide.ts';
import { mediumBank, turnRadius } from '../aircraft/turns.ts';
import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { ACROSS, ALONG, HEIGHT } from '../flying/motions.ts';
import { downwindTrack } from '../flying/pattern-legs.ts';
import type { Leg } from '../flying/procedure.ts';
import { seekRoot } from '../numerics/root.ts';
import { cosine } from '../numerics/steady-math.ts';
import { optional, wholeNumber, yesOrNo } from '../terms/rules.ts';
import { type Lead, solveFrom } from './approach-180.ts';
import { type ApproachMethod, type ApproachTask, type Solution, spotTolerance } from './approach-method.ts';

const mostCircles = 20;

/**
 * From high over the field: whole circles at a low bank that end at the downwind key and at its height, then the 180
 * (FAA-H-8083-3, chapter 9). Either the circles are held on the ground, and their radius is found; or they drift with
 * the wind at one bank, that bank is found, and the circles start as far upwind as they will drift.
 */
export const approachSpiral: ApproachMethod = {
  id: 'spiral',
  startsAt: 'overhead',
  usualStart: 2500 * metresPerFoot,
  finds: ['circle-radius', 'circle-bank'],
  endsIn: '180',
  hasOwnSpacing: true,
  options: { circles: optional(wholeNumber(1, mostCircles)), drift: optional(yesOrNo) },
  solve: (asked, conditions) => {
    const within = (bank: number) => circlesWithin(bank, asked, conditions);
    const flown = asked.options.spiral?.circles ?? Math.max(1, within(asked.bank));
    const found = leadOf(flown, asked, conditions);
    if (!found) return undefined;
    const solution = solveFrom(found.lead, asked, conditions);
    return (
      solution && {
        ...solution,
        solved: found.solved,
        made: solution.made && found.found,
        circles: { flown, allowed: () => within(mediumBank) },
      }
    );
  },
};

/**
 * rad. A likely low bank to start the search from: shallow turns are those under about 20 degrees (FAA-H-8083-3,
 * chapter 3).
 */
const lowBank = (20 * Math.PI) / 180;
/** m and rad: the limits of a circle of a spiral. */
const largestRadius = 5000;
const banks = [(3 * Math.PI) / 180, (45 * Math.PI) / 180] as const;

/**
 * How many whole circles the height allows with no more than a bank (rad): none where even one is steeper. More
 * circles in the same height are smaller and steeper, so the number is found by halving.
 */
export function circlesWithin(bank: number, asked: ApproachTask, conditions: Conditions): number {
  const allowed = (circles: number) => {
    const found = leadOf(circles, asked, conditions);
    return found?.found === true && found.steepest <= bank;
  };
  let fewest = 0;
  let tooMany =
    Math.min(mostCircles, Math.floor((asked.height - asked.keyHeight) / circleLoss(conditions, banks[1]))) +
    1;
  while (tooMany - fewest > 1) {
    const middle = (fewest + tooMany) >> 1;
    if (allowed(middle)) fewest = middle;
    else tooMany = middle;
  }
  return fewest;
}

function leadOf(circles: number, asked: ApproachTask, conditions: Conditions): FoundLead | undefined {
  return asked.options.spiral?.drift
    ? driftingLead(circles, asked, conditions)
    : heldLead(circles, asked, conditions);
}

/** Height, m, lost in one whole circle at a bank, in the air at the surface. */
function circleLoss(conditions: Conditions, bank: number): number {
  const tas = conditions.polar.speed * conditions.tasOverEas(0);
  const sin = sinOfGlide(conditions.polar, conditions.polar.speed, cosine(bank));
  return 2 * Math.PI * turnRadius(tas, bank) * sin;
}

interface FoundLead {
  readonly lead: Lead;
  readonly solved: Solution['solved'];
  /** rad. */
  readonly steepest: number;
  readonly found: boolean;
}

function heldLead(circles: number, asked: ApproachTask, conditions: Conditions): FoundLead | undefined {
  const { side, height, spacing, keyHeight } = asked;
  const from = downwindTrack(side);
  const circle = (radius: number): Leg => ({
    kind: 'circle',
    phase: 'circle',
    radius,
    side,
    from,
    to: from + side * 2 * Math.PI * circles,
  });
  const start = { along: 0, across: side * spacing, height, eas: conditions.polar.speed };
  const spare = (radius: number) => endOf(start, circle(radius), conditions).state[HEIGHT]! - keyHeight;
  const slope = (-2 * Math.PI * circles) / conditions.polar.ratio;
  const least = turnRadius(conditions.polar.speed, conditions.aircraft.turns.limit);
  const likely = { guess: (keyHeight - height) / slope, slope, within: [least, largestRadius] } as const;
  const sought = seekRoot(spare, likely, spotTolerance / 100);
  if (!sought) return undefined;
  return {
    lead: { start, before: [circle(sought.x)] },
    solved: { name: 'circle-radius', value: sought.x, unit: 'm' },
    steepest: endOf(start, circle(sought.x), conditions).steepestCircle,
    found: sought.found,
  };
}

function driftingLead(circles: number, asked: ApproachTask, conditions: Conditions): FoundLead | undefined {
  const { side, height, spacing, keyHeight } = asked;
  const heading = downwindTrack(side);
  const turn = (bank: number): Leg => ({
    kind: 'turn',
    phase: 'circle',
    track: heading + side * 2 * Math.PI * circles,
    side,
    bank,
    rollOut: true,
  });
  const origin = { along: 0, across: 0, height, eas: conditions.polar.speed, heading };
  const spare = (bank: number) => endOf(origin, turn(bank), conditions).state[HEIGHT]! - keyHeight;
  const slope = (height - keyHeight) / Math.tan(lowBank);
  const sought = seekRoot(spare, { guess: lowBank, slope, within: banks }, spotTolerance / 100);
  if (!sought) return undefined;
  const end = endOf(origin, turn(sought.x), conditions).state;
  return {
    lead: {
      start: { ...origin, along: -end[ALONG]!, across: side * spacing - end[ACROSS]! },
      before: [turn(sought.x)],
    },
    solved: { name: 'circle-bank', value: sought.x, unit: 'deg' },
    steepest: sought.x,
    found: sought.found,
  };
}

/** The flight at the end of one leg; its height is NaN where the leg does not end. */
function endOf(start: Lead['start'], leg: Leg, conditions: Conditions): Flight {
  const flight = new Flight(conditions, 0, 'search');
  flight.begin(start, leg);
  flight.leg(leg);
  if (!flight.flyable) flight.state[HEIGHT] = Number.NaN;
  return flight;
}
