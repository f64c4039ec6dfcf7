import type { Plan } from '../../flight/terms/plan.ts';
import { segmentsOf, simplified } from '../kit/geometry.ts';
import type { Line } from '../labels/label.ts';
import { type DrawnFault, endMark, type FaultLine } from '../shared/drawn-fault.ts';
import { faultPlaces } from './profile-fault-places.ts';
import { type ProfileView, profilePoint } from './profile-view.ts';

/** A fault on the page, its end last. mm. */
export interface ProfileFault extends FaultLine {
  readonly fault: DrawnFault;
}

export function layOutFaults(
  plan: Plan,
  view: ProfileView,
  faults: readonly DrawnFault[],
): readonly ProfileFault[] {
  return faults.map((fault) => {
    const points = faultPlaces(plan, fault).map(({ toGo, height }) => profilePoint(view, toGo, height));
    return { fault, points: simplified(points, 0.05), end: points.at(-1)! };
  });
}

/** What labels must not cover of the faults. */
export function faultLines(faults: readonly FaultLine[]): Line[] {
  return faults.flatMap(({ points, end }) =>
    [...segmentsOf(points), ...endMark(end)].map((segment) => ({ ...segment, halfWidth: 0.2 })),
  );
}
