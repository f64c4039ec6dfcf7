import type { Edition } from '../../../components/context.ts';
import type { School } from '../../school/school.ts';
import { digest } from '../packet/fingerprint.ts';
import type { Scenario } from '../packet/scenario.ts';

/** What a packet is made from but its date. */
export interface PacketSource {
  /** As it was typed. */
  readonly lesson: string;
  readonly scenario: Scenario;
  /** As `schoolFor` gives it. */
  readonly school: School;
  readonly paper: string;
  readonly edition: Edition;
  /** What is the same for every packet of a build: the program, and the airfields as they were typed. */
  readonly common: unknown;
}

/**
 * A key that changes whenever anything in the packet can change, except its date and its pictures. It is found
 * without a flight, so that an unchanged book costs no more than reading it. Magnetic variation goes by the day where
 * the school gives none, so for airfields the key has what was typed, not what it comes to.
 */
export function packetKey(source: PacketSource): string {
  const { scenario, school, ...others } = source;
  const { airfield, runway, aircraft, ...request } = scenario.request;
  const { name, cautions, grading, minimums, units } = school;
  const inputs = {
    ...others,
    request: { ...request, airfield: airfield.name, runway: runway.name },
    aircraft: { ...aircraft, ...scenario.aircraft },
    school: { name, cautions, grading, minimums, units },
    fleet: [...school.fleet.keys()],
    airfields: [...school.airfields.keys()],
    faults: Object.fromEntries(school.faults),
  };
  return digest(inputs);
}

/**
 * The school as one packet sees it: only the flown aircraft of its fleet. Another aircraft's file changes nothing in
 * it.
 */
export function schoolFor(school: School, aircraftId: string): School {
  const flown = school.fleet.get(aircraftId);
  return { ...school, fleet: new Map(flown ? [[aircraftId, flown]] : []), aircraftIds: [aircraftId] };
}
