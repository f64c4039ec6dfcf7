import type { ElementContent } from 'hast';
import type { VFile } from 'vfile';
import type { PacketContext } from '../../../components/context.ts';
import type { Lesson } from '../../lesson/parse-lesson.ts';
import type { PageDocument } from '../formats/page-document.ts';
import { type PaperName, papers } from '../paper/paper.ts';
import { renderStudyLesson } from '../study/study-lesson.ts';
import { fingerprint } from './fingerprint.ts';
import { packetDocument } from './packet.ts';
import type { Scenario } from './scenario.ts';

/** A lesson that was read, and flown for one packet. */
export interface FlownLesson {
  readonly lesson: Lesson<PacketContext>;
  readonly file: VFile;
  readonly scenario: Scenario;
  /** For this edition and this paper. */
  readonly context: PacketContext;
  readonly paper: PaperName;
  readonly date: Date;
  /** Version of this program: another version may compute other figures. */
  readonly version: string;
}

/**
 * The packet as it is printed, with the marks by which the study page finds what it makes again. What a directive finds
 * wrong becomes a message on the lesson's file.
 */
export function flownPacket({
  lesson,
  file,
  scenario,
  context,
  paper,
  date,
  version,
}: FlownLesson): PageDocument {
  const { plan, school, units, edition } = context;
  const { name, cautions, faults, grading } = school;
  const body = renderStudyLesson(lesson, context, file);
  return packetDocument({
    title: lesson.frontMatter!.title,
    body: body.children as ElementContent[],
    edition,
    plan,
    request: scenario.request,
    school,
    rules: scenario.airfield.rules,
    day: scenario.day,
    units,
    paper: papers[paper],
    date,
    fingerprint: fingerprint({
      lesson: String(file),
      pictures: lesson.pictures.map(({ src }) => src),
      request: scenario.request,
      aircraft: scenario.aircraft,
      airfield: scenario.airfield,
      school: { name, cautions, faults: Object.fromEntries(faults), grading },
      fields: Object.fromEntries(school.airfields),
      units,
      paper,
      edition,
      version,
    }),
  });
}
