import type { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import type { Edition, PacketContext } from '../../../components/context.ts';
import { planFigures } from '../../../components/plan-figures.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { checkKeysExplained } from '../../lesson/check-keys-explained.ts';
import { checkTypedFigures } from '../../lesson/check-typed-figures.ts';
import type { Lesson } from '../../lesson/parse-lesson.ts';
import { renderLesson } from '../../lesson/render-lesson.ts';
import type { School } from '../../school/school.ts';
import { papers } from '../paper/paper.ts';
import { countRefused, type GradeTally } from './grade-tally.ts';
import { inHandMessages } from './in-hand-messages.ts';
import { attemptFor } from './lesson-messages.ts';
import { packetContext } from './packet-context.ts';
import { planMessages } from './plan-messages.ts';
import { sayOfPlan } from './say-of-plan.ts';
import { aircraftOf, flownPlan, ofClasses, type Scenario, scenarioOf } from './scenario.ts';

const editions: readonly Edition[] = ['student', 'instructor'];

/**
 * Flies a lesson with every aircraft that it is for and renders it in both editions, for the messages alone: they
 * land on the lesson's file, each once. A message that holds only for some of the aircraft names them. The plans are
 * counted by their grades.
 */
export function checkFlights(
  lesson: Lesson<PacketContext>,
  file: VFile,
  school: School,
  tally?: GradeTally,
): void {
  const { frontMatter } = lesson;
  if (!frontMatter) return;
  const ids = frontMatter.aircraft
    ? [frontMatter.aircraft]
    : ofClasses(school, frontMatter, [...school.fleet.keys()]);
  const found = new Map<string, Found>();
  const attempt = attemptFor({ file, source: lesson.frontMatterSource }, {}, new Map());
  const collect = (aircraft: string | undefined, check: () => void) => {
    for (const message of messagesOf(check, file)) remember(message, aircraft, found);
  };
  if (ids.length === 0) collect(undefined, () => attempt(() => aircraftOf(school, frontMatter)));
  for (const id of ids) {
    const name = school.fleet.get(id)?.name ?? id;
    collect(name, () =>
      attempt(() => {
        const scenario = scenarioOf(school, frontMatter, id, {});
        checkFlight(lesson, file, school, { scenario, plan: countedPlan(scenario, tally) });
      }),
    );
  }
  for (const { message, aircraft } of found.values()) {
    if (aircraft.size < ids.length && ![...aircraft].every((name) => message.reason.includes(name))) {
      message.reason += ` (for ${[...aircraft].join(', ')})`;
      message.message = message.reason;
    }
    file.messages.push(message);
  }
}

function countedPlan(scenario: Scenario, tally: GradeTally | undefined): Plan {
  const plan = countRefused(tally, () => flownPlan(scenario));
  const isRefused = plan.grade === 'not-to-be-flown' && scenario.shows !== plan.grade;
  if (isRefused) tally?.refuse();
  else tally?.add([plan.grade]);
  return plan;
}

/** What is asked for, and how it is flown. */
interface Flown {
  readonly scenario: Scenario;
  readonly plan: Plan;
}

function checkFlight(
  lesson: Lesson<PacketContext>,
  file: VFile,
  school: School,
  { scenario, plan }: Flown,
): void {
  const { units } = school;
  const { request } = scenario;
  for (const message of [...planMessages(plan, scenario), ...inHandMessages(plan, units)])
    sayOfPlan(message, { file, source: lesson.frontMatterSource });
  for (const edition of editions) {
    const context = packetContext(school, { request, plan }, edition, papers[school.paper]);
    renderLesson<PacketContext>(lesson, context, file);
  }
  checkKeysExplained(
    lesson,
    plan.keys.map((key) => key.id),
    file,
  );
  checkTypedFigures(lesson, planFigures(plan, units), units, file);
}

/** The messages that a check adds, taken off the file again. */
function messagesOf(check: () => void, file: VFile): VFileMessage[] {
  const before = file.messages.length;
  check();
  // In place: the front matter reports into the same list.
  return file.messages.splice(before);
}

interface Found {
  readonly message: VFileMessage;
  /** Names of the aircraft that it holds for. */
  readonly aircraft: Set<string>;
}

function remember(message: VFileMessage, aircraft: string | undefined, found: Map<string, Found>): void {
  const { line, column, ruleId, reason } = message;
  // A typed figure may agree with a different figure for each aircraft: one suggestion is enough.
  const what = ruleId === 'typed-figure' ? '' : reason;
  const key = `${line}:${column}:${ruleId}:${what}`;
  const known = found.get(key) ?? { message, aircraft: new Set<string>() };
  if (aircraft !== undefined) known.aircraft.add(aircraft);
  found.set(key, known);
}
