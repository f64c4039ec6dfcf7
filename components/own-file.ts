import type { AircraftFile } from '../src/school/aircraft.ts';
import type { PacketContext } from './context.ts';

/** The school's own file of the aircraft that is flown, with its id; undefined for one that is not of this school. */
export function ownFile({ request, school }: PacketContext): { id: string; file: AircraftFile } | undefined {
  const files = [...school.fleet].map(([id, file]) => ({ id, file }));
  return (
    files.find(({ file }) => file === request.aircraft) ??
    files.find(({ file }) => file.name === request.aircraft.name)
  );
}
