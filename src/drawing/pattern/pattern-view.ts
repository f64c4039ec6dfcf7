import type { Plan } from '../../flight/terms/plan.ts';
import { type Box, boxOf, type Point, pageVector } from '../kit/geometry.ts';
import type { DrawnFault } from '../shared/drawn-fault.ts';

/** How the ground lies on the page: which way the landing runs, and how large it is drawn. */
export interface PatternView {
  readonly landing: Landing;
  /** 1:`scale`. */
  readonly scale: number;
  /** Whether the runway is drawn to its far end, or broken off. */
  readonly wholeRunway: boolean;
  /** The spot on the page, mm. */
  readonly spot: Point;
}

/** Which way the landing runs on the page. */
export type Landing = 'up' | 'right';

/** A place on the ground, m from the spot. */
export interface Ground {
  readonly along: number;
  readonly across: number;
}

/** m on the ground to mm on the page. */
export function onPage(view: PatternView, metres: number): number {
  return (metres * 1000) / view.scale;
}

export function pagePoint(view: PatternView, { along, across }: Ground): Point {
  const forward = onPage(view, along);
  const right = onPage(view, across);
  return view.landing === 'up'
    ? { x: view.spot.x + right, y: view.spot.y - forward }
    : { x: view.spot.x + forward, y: view.spot.y + right };
}

/** Unit vector on the page of a true direction (rad). */
export function pageDirection(view: PatternView, plan: Plan, direction: number): Point {
  return pageVector(direction - plan.runway.heading + (view.landing === 'up' ? 0 : Math.PI / 2));
}

/**
 * Where a broken-off runway ends, m past the spot: beyond the landing roll, so that the whole landing is in sight,
 * and not before the farthest place flown over. Something that ends past a break would seem to have left the runway.
 */
function brokenOffAt(plan: Plan, faults: readonly DrawnFault[]): number {
  const flown = [...plan.track, ...faults.flatMap(({ track }) => track)];
  return flown.reduce(
    (far, { along }) => Math.max(far, along),
    Math.max(plan.aircraft.landingRoll * 1.25, 120),
  );
}

/** The part of the runway that must be on the page, m along from the spot. */
function runwayReach(
  plan: Plan,
  wholeRunway: boolean,
  faults: readonly DrawnFault[],
): { readonly from: number; readonly to: number } {
  const from = -plan.runway.spot;
  const end = plan.runway.length - plan.runway.spot;
  return { from, to: wholeRunway ? end : Math.min(end, brokenOffAt(plan, faults)) };
}

export function runwayIsLong(plan: Plan, faults: readonly DrawnFault[]): boolean {
  return runwayReach(plan, false, faults).to < plan.runway.length - plan.runway.spot;
}

/** mm: a runway is broken off this far past the last thing on it, to show that the thing is on the runway. */
const pastTheLast = 3;

/** The runway as it is drawn. */
export interface DrawnRunway {
  /** m along from the spot. */
  readonly from: number;
  readonly to: number;
  /** Whether it is broken off before its real end. */
  readonly broken: boolean;
}

export function drawnRunway(plan: Plan, view: PatternView, faults: readonly DrawnFault[]): DrawnRunway {
  const { from, to } = runwayReach(plan, view.wholeRunway, faults);
  const end = plan.runway.length - plan.runway.spot;
  const far = Math.min(end, to + (pastTheLast * view.scale) / 1000);
  return { from, to: far, broken: far < end };
}

/** Obstacles near enough to the flown track to be drawn: within 150 m of it. */
export function drawnObstacles(plan: Plan) {
  return plan.runway.obstacles.filter((obstacle) =>
    plan.track.some(
      (sample) =>
        Math.abs(sample.along - obstacle.along) < 150 &&
        Math.abs(sample.across - obstacle.across) < 150 + obstacle.width / 2,
    ),
  );
}

/** Two opposite corners of the ground that must be on the page. */
export function groundShown(plan: Plan, wholeRunway: boolean, faults: readonly DrawnFault[]): Ground[] {
  const { from, to } = runwayReach(plan, wholeRunway, faults);
  const places: Ground[] = [
    ...plan.track,
    ...plan.keys,
    ...faults.flatMap(({ track }) => track),
    { along: 0, across: 0 },
    { along: from, across: -plan.runway.width / 2 },
    { along: to, across: plan.runway.width / 2 },
    ...drawnObstacles(plan).flatMap(({ along, across, width }) => [
      { along, across: across - width / 2 },
      { along, across: across + width / 2 },
    ]),
  ];
  const along = places.map((place) => place.along);
  const across = places.map((place) => place.across);
  return [
    { along: least(along), across: least(across) },
    { along: -least(along.map((each) => -each)), across: -least(across.map((each) => -each)) },
  ];
}

function least(values: readonly number[]): number {
  return values.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);
}

/** That ground on the page, as a box in mm about the spot. */
export function extent(view: Omit<PatternView, 'spot'>, shown: readonly Ground[]): Box {
  return boxOf(shown.map((place) => pagePoint({ ...view, spot: { x: 0, y: 0 } }, place)));
}
