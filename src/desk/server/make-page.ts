import { join } from 'node:path';
import { VFile } from 'vfile';
import type { PacketContext } from '../../../components/context.ts';
import { components } from '../../../components/list.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { checkPlanParts } from '../../lesson/check-plan-parts.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import { type Lesson, parseLesson } from '../../lesson/parse-lesson.ts';
import { hasErrors } from '../../messages/failures.ts';
import { canonicalJson } from '../../press/packet/fingerprint.ts';
import { flownPacket } from '../../press/packet/flown-packet.ts';
import { keyAmong, removeRepeats, reportScenario } from '../../press/packet/lesson-messages.ts';
import { picturesIn } from '../../press/packet/lesson-pictures.ts';
import { packetContext } from '../../press/packet/packet-context.ts';
import { planMessages } from '../../press/packet/plan-messages.ts';
import { type PlanMessage, sayOfPlan } from '../../press/packet/say-of-plan.ts';
import {
  aircraftOf,
  flownPlan,
  type Scenario,
  ScenarioError,
  scenarioOf,
} from '../../press/packet/scenario.ts';
import { subjectLine } from '../../press/packet/setting.ts';
import { papers } from '../../press/paper/paper.ts';
import { schoolFor } from '../../press/printing/packet-key.ts';
import type { AircraftFile } from '../../school/aircraft.ts';
import type { School } from '../../school/school.ts';
import type { DeskMessage, PageAnswer, PageChoices, PageEdition, PagePaper, PageRequest } from '../api.ts';
import { readChoices } from './choices.ts';
import { choiceMessage, messagesOf, messagesOfAll } from './desk-messages.ts';
import { keepingRenders } from './kept-renders.ts';
import { type LiveSchool, LiveSchools } from './live-school.ts';
import { Refusal } from './refusal.ts';
import type { SchoolFiles } from './school-files.ts';
import { schoolFile } from './school-paths.ts';
import { splitPage } from './split-page.ts';

/** What the directives of one packet are rendered from, with what it was flown for. */
interface Setting {
  readonly scenario: Scenario;
  readonly plan: Plan;
  readonly school: School;
  readonly context: PacketContext;
}

/** How many settings are kept: a lesson in two editions, for some aircraft, or in some winds. */
const most = 12;

/**
 * Makes the page of a lesson as it will print, again with every change: what the change did not touch (the school,
 * the flight, the drawings) is kept.
 */
export class PageMaker {
  readonly #files: SchoolFiles;
  readonly #schools: LiveSchools;
  readonly #version: string;
  readonly #today: () => Date;
  readonly #components = keepingRenders(components);
  /** By school, so that they are dropped together with it. */
  readonly #settings = new WeakMap<LiveSchool, Map<string, Setting | ScenarioError>>();

  /** `version`: that of this program; `today`: the day on a packet, as `build` has it. */
  constructor(files: SchoolFiles, version: string, today: () => Date) {
    this.#files = files;
    this.#schools = new LiveSchools(files);
    this.#version = version;
    this.#today = today;
  }

  /** The school as saved. */
  async school(): Promise<LiveSchool> {
    return this.#schools.read({}, this.#today());
  }

  /** Throws a `Refusal` where the path is not one of the school's, or there is no text. */
  async make(request: PageRequest): Promise<PageAnswer> {
    const started = performance.now();
    const answer = await this.#make(request);
    return { ...answer, took: Math.round(performance.now() - started) };
  }

  async #make(request: PageRequest): Promise<Omit<PageAnswer, 'took'>> {
    const { path, text: typed, unsaved = {} } = request;
    const kind = schoolFile(path)?.kind;
    const isLesson = kind === 'lesson';
    const others = isLesson || typed === undefined ? unsaved : { ...unsaved, [path]: typed };
    // Refuses a path that the desk does not touch.
    const text = await this.#schools.text(path, typed);
    if (text === undefined) throw new Refusal(404, `There is no file \`${path}\` in the school.`);
    const day = this.#today();
    const live = await this.#schools.read(others, day);
    const ofSchool = messagesOfAll(live.files, this.#files.folder);
    if (!isLesson) return { messages: ofSchool };
    const file = new VFile({ path: join(this.#files.folder, path), value: text });
    const lesson = parseLesson<PacketContext>(file, this.#components, {
      pictures: picturesIn(this.#files.folder),
    });
    const made = this.#pageOf({ lesson, file, live, day }, request);
    removeRepeats(file);
    return { ...made, messages: [...messagesOf(file, path), ...ofSchool, ...(made.messages ?? [])] };
  }

  #pageOf(
    { lesson, file, live, day }: TypedLesson,
    { choices: asked = {}, have = [] }: PageRequest,
  ): Partial<PageAnswer> {
    if (lesson.frontMatter) checkPlanParts(lesson, file);
    const read = readChoices(asked);
    const school = live.withSoundAircraft;
    if (!lesson.frontMatter || !school || read.messages.length > 0) return { messages: read.messages };
    const edition = asked.edition ?? 'student';
    const paper = asked.paper ?? school.paper;
    const wanted = { frontMatter: lesson.frontMatter, asked, edition, paper };
    const setting = this.#setting(live, school, wanted, read.choices);
    if (typeof setting === 'string') return { messages: [choiceMessage('aircraft', setting)] };
    if (setting instanceof ScenarioError) {
      const { key, keys, message } = setting;
      // Of a class that the lesson is not for: the aircraft was chosen for this page, and the lesson is not wrong.
      const choice =
        key === 'class' && asked.aircraft !== undefined
          ? 'aircraft'
          : keyAmong(keys, { source: lesson.frontMatterSource }, { ...asked });
      if (asked[choice as keyof PageChoices] !== undefined)
        return { messages: [choiceMessage(choice, message)] };
      if (!hasErrors(file)) reportScenario(setting, { file, source: lesson.frontMatterSource });
      return {};
    }
    // After the setting, so that a choice that is not possible is reported even for a lesson with a mistake.
    if (hasErrors(file)) return {};
    const { scenario, context } = setting;
    const document = flownPacket({
      lesson,
      file,
      scenario,
      context,
      paper,
      date: day,
      version: this.#version,
    });
    if (hasErrors(file)) return {};
    const { plan, request } = context;
    const source = lesson.frontMatterSource;
    const messages = planMessages(plan, scenario).flatMap((message) =>
      sayAt(message, { file, source, asked: { ...asked } }),
    );
    return {
      messages,
      page: splitPage(document, papers[paper], new Set(have)),
      setting: {
        aircraft: setting.school.aircraftIds[0]!,
        airfield: [...school.airfields].find(([, each]) => each === setting.scenario.airfield)?.[0] ?? '',
        runway: request.runway.name,
        edition,
        paper,
        subject: subjectLine(plan, school.units),
        grade: plan.grade,
      },
    };
  }

  /** A string where there is no aircraft to work it out for. */
  #setting(
    live: LiveSchool,
    school: School,
    wanted: Wanted,
    choices: Parameters<typeof scenarioOf>[3],
  ): Setting | ScenarioError | string {
    const { frontMatter, asked, edition, paper } = wanted;
    try {
      const id = wantedAircraft(school, frontMatter, asked.aircraft);
      if (id === undefined) return 'No aircraft is named: choose one.';
      if (school.aircraftIds.includes(id) && !school.fleet.has(id))
        return `The file of \`${id}\` has a mistake: nothing is worked out for it.`;
      const scenario = scenarioOf(school, frontMatter, id, choices);
      const key = canonicalJson([id, edition, paper, scenario.shows, scenario.day, plainRequest(scenario)]);
      const kept = this.#settings.get(live) ?? new Map<string, Setting | ScenarioError>();
      this.#settings.set(live, kept);
      const setting = kept.get(key) ?? settingOf(scenario, schoolFor(school, id), wanted, [...kept.values()]);
      kept.delete(key);
      kept.set(key, setting);
      if (kept.size > most) kept.delete(kept.keys().next().value!);
      return setting;
    } catch (error) {
      if (error instanceof ScenarioError) return error;
      throw error;
    }
  }
}

/** Says it at the choice that it comes from; what comes from the lesson is said on its file. */
function sayAt(message: PlanMessage, told: Required<Parameters<typeof sayOfPlan>[1]>): DeskMessage[] {
  const { keys, words, severity, rule } = message;
  const choice = keyAmong(keys, told, told.asked);
  if (told.asked[choice] !== undefined) return [choiceMessage(choice, words, severity, rule)];
  sayOfPlan(message, told);
  return [];
}

/** A lesson as it is typed, in the school as it stands, on the day that its page bears. */
interface TypedLesson {
  readonly lesson: Lesson<PacketContext>;
  readonly file: VFile;
  readonly live: LiveSchool;
  readonly day: Date;
}

interface Wanted {
  readonly frontMatter: FrontMatter;
  readonly asked: PageChoices;
  readonly edition: PageEdition;
  readonly paper: PagePaper;
}

/**
 * The first aircraft that the lesson is printed for, even if its file has a mistake just now: nobody who is typing in
 * that file is shown the page of another aircraft meanwhile.
 */
function wantedAircraft(
  school: School,
  frontMatter: FrontMatter,
  asked: string | undefined,
): string | undefined {
  // All that is asked about one whose file cannot be read is its class: take it to be right.
  const unread = { class: frontMatter.class?.[0] } as AircraftFile;
  const fleet = new Map(school.aircraftIds.map((id) => [id, school.fleet.get(id) ?? unread]));
  return aircraftOf(
    { ...school, fleet, aircraftIds: [] },
    frontMatter,
    asked === undefined ? [] : [asked],
  )[0];
}

/** Flies it, unless the same flight has been made for the other edition or other paper. */
function settingOf(
  scenario: Scenario,
  school: School,
  { edition, paper }: Pick<Wanted, 'edition' | 'paper'>,
  others: readonly (Setting | ScenarioError)[],
): Setting | ScenarioError {
  const { request } = scenario;
  const asked = canonicalJson(request);
  const flown = others.find(
    (each): each is Setting =>
      !(each instanceof ScenarioError) && canonicalJson(each.scenario.request) === asked,
  );
  try {
    const plan = flown?.plan ?? flownPlan(scenario);
    return {
      scenario,
      plan,
      school,
      context: packetContext(school, { request, plan }, edition, papers[paper]),
    };
  } catch (error) {
    if (error instanceof ScenarioError) return error;
    throw error;
  }
}

/** The aircraft and the airfield are the school's: as long as the school is the same, their names are enough. */
function plainRequest({ request, airfield }: Scenario): object {
  const { aircraft, airfield: _, runway, ...others } = request;
  return { ...others, aircraft: aircraft.name, airfield: airfield.name, runway: runway.name };
}
