import type { AircraftFile } from './aircraft.ts';
import type { AirfieldFile } from './airfield.ts';
import type { FaultsFile } from './faults.ts';

/** What lies beside `school.yaml`. An id is a file's name without its ending. */
export interface SchoolFolder {
  readonly folder: string;
  /** The files without an error. */
  readonly fleet: ReadonlyMap<string, AircraftFile>;
  readonly airfields: ReadonlyMap<string, AirfieldFile>;
  readonly faults: ReadonlyMap<string, FaultsFile>;
  /** Every file that is there, sound or not. */
  readonly aircraftIds: readonly string[];
  readonly airfieldIds: readonly string[];
  readonly lessonIds: readonly string[];
}
