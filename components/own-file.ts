import type { AircraftFile } from '../src/school/aircraft.ts';
import type { PacketContext } from './context.ts';

/** The school's own file of the aircraft flown, with its id; undefined for an aircraft that is not the school's. */
export function ownFile({ request, school }: PacketContext): { id: string; file: AircraftFile } | undefined {
  const files = [...school.fleet].map(([id, file]) => ({ id, file }));
  return (
    files.find(({ file }) => file === request.aircraft) ??
    files.find(({ file }) => file.name === request.aircraft.name)
  );
}
