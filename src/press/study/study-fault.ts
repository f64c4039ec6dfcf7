import type { PacketContext } from '../../../components/context.ts';
import { drawnFaults } from '../../../components/drawn-faults.ts';
import { flownFault } from '../../flight/faults/flown-fault.ts';
import type { AircraftClass } from '../../flight/terms/aircraft-class.ts';
import { RequestError } from '../../flight/terms/errors.ts';
import { DirectiveError } from '../../lesson/component.ts';
import { isForClass } from '../../school/aircraft-classes.ts';
import type { Fault, FaultsFile } from '../../school/faults.ts';
import { effectWords } from '../../words/faults/effect-words.ts';
import { requestSentence } from '../../words/refusals/request-words.ts';
import type { StudySchool } from './study-data.ts';

/** The rows that can be flown for a class of aircraft, by their files. */
export function flyableFaults(files: StudySchool['faults'], of: AircraftClass): [string, FaultsFile][] {
  return files.flatMap(([id, file]): [string, FaultsFile][] => {
    const faults = file.faults.filter((row) => row.fly && isForClass(row, of));
    return faults.length > 0 ? [[id, { ...file, faults }]] : [];
  });
}

/** The row that `file/row` names, or `row` alone, for a class of aircraft. */
export function faultNamed(files: StudySchool['faults'], name: string, of: AircraftClass): Fault | undefined {
  return files.flatMap(([id, { faults }]) =>
    faults.filter((row) => (row.id === name || `${id}/${row.id}` === name) && isForClass(row, of)),
  )[0];
}

/** Where the fault ends, in a few words: `base turn late, 250 m short`. */
export function faultEnd(row: Fault, name: string, context: PacketContext): string {
  try {
    const [drawn] = drawnFaults([name], context);
    return `${row.fault.toLowerCase()}, ${drawn?.end}`;
  } catch (error) {
    if (!(error instanceof DirectiveError || error instanceof RequestError)) throw error;
    return `${row.fault.toLowerCase()}, not flown in this setting`;
  }
}

/** How the fault was flown, in words. */
export function faultEffect({ fly }: Fault, { request, units }: PacketContext): string {
  if (!fly) return 'This fault is not flown.';
  try {
    return effectWords(flownFault(fly.change, request), units);
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    return `Not flown in this setting: ${requestSentence(error, units)}`;
  }
}
