import type { VFile } from 'vfile';
import type { Edition } from '../../../components/context.ts';
import type { School } from '../../school/school.ts';
import type { YamlSource } from '../../school/yaml-source.ts';
import type { PageDocument } from '../formats/page-document.ts';
import { type PaperName, papers } from '../paper/paper.ts';
import type { Made } from '../printing/order.ts';
import { studyData } from '../study/study-data.ts';
import { withStudy } from '../study/with-study.ts';
import { flownPacket } from './flown-packet.ts';
import { packetContext } from './packet-context.ts';
import { planMessages } from './plan-messages.ts';
import type { SoundLesson } from './read-lesson.ts';
import { sayOfPlan } from './say-of-plan.ts';
import { planOf, type Scenario } from './scenario.ts';

/** One flight of a lesson. */
export interface PacketFlight {
  readonly scenario: Scenario;
  /** As `schoolFor` gives it. */
  readonly school: School;
  /** Takes the messages of the flight. */
  readonly file: VFile;
  /** For its front matter. */
  readonly source: YamlSource | undefined;
  /** What was asked for in its place, by its key. */
  readonly asked: Readonly<Record<string, string>>;
  readonly date: Date;
  /** Version of this program: another version may compute other figures. */
  readonly version: string;
}

export interface WantedPacket {
  readonly path: string;
  readonly paper: PaperName;
  readonly edition: Edition;
}

/** The packets of one flight. */
export interface FlownPackets {
  /** A packet, once only: it is large, and there may be hundreds. Undefined where any message is an error. */
  readonly take: (path: string) => Made | undefined;
}

/**
 * Flies a lesson, renders it in every way that is wanted, and says the grade of its plan. Throws ScenarioError where
 * it cannot be flown, and NotToBeFlownError where it is not to be.
 */
export function makePackets(
  { lesson, messages }: SoundLesson,
  { scenario, school, file, source, asked, date, version }: PacketFlight,
  wanted: readonly WantedPacket[],
): FlownPackets {
  const plan = planOf(scenario);
  const { request } = scenario;
  const before = file.messages.length;
  for (const message of planMessages(plan, scenario)) sayOfPlan(message, { file, source, asked });
  const pages = wanted.map(({ path, paper, edition }) => {
    const context = packetContext(school, { request, plan }, edition, papers[paper]);
    const printed = flownPacket({ lesson, file, scenario, context, paper, date, version });
    const { rules } = scenario.airfield;
    const data = () => studyData({ context, rules, day: scenario.day, uses: lesson.uses });
    const document: PageDocument = { ...printed, onScreen: () => withStudy(printed, data()) };
    return [path, document] as const;
  });
  const ofFlight = file.messages.slice(before);
  const packets = new Map(ofFlight.some(({ fatal }) => fatal) ? [] : pages);
  return {
    take: (path) => {
      const document = packets.get(path);
      packets.delete(path);
      return (
        document && {
          document,
          messages: [...messages, ...ofFlight],
          pictures: lesson.pictures,
          grades: [plan.grade],
        }
      );
    },
  };
}
