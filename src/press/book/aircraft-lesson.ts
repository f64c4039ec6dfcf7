import { VFile } from 'vfile';
import type { PacketContext } from '../../../components/context.ts';
import { components } from '../../../components/list.ts';
import { type Lesson, parseLesson } from '../../lesson/parse-lesson.ts';
import type { AircraftFile } from '../../school/aircraft.ts';

/** The pages about an aircraft in a book: a lesson like any other, which no school has to write. */
export function aircraftLesson(aircraft: AircraftFile): { lesson: Lesson<PacketContext>; file: VFile } {
  const parts = [
    `---\ntitle: ${JSON.stringify(aircraft.name)}\n---`,
    ":::caution\nThe aircraft's own handbook, local rules and the instructor's judgement prevail over these pages.\n:::",
    '## Its figures\n\n::aircraft-figures',
    "## What its turns cost\n\nHeight lost, time taken and the stall speed in each bank. No row goes beyond the aircraft's own limit of bank.\n\n::turns",
    ...(aircraft.engineFailure?.length ? ['## If the engine stops\n\n::checklist'] : []),
  ];
  const file = new VFile({ path: `${aircraft.name}.md`, value: parts.join('\n\n') });
  return { lesson: parseLesson<PacketContext>(file, components), file };
}
