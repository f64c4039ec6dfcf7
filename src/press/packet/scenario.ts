import { planApproach } from '../../flight/plan/planner.ts';
import type { Power } from '../../flight/terms/aircraft.ts';
import type { Circuit, Runway } from '../../flight/terms/airfield.ts';
import { RequestError } from '../../flight/terms/errors.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import { didYouMean } from '../../messages/nearest-name.ts';
import type { AircraftFile } from '../../school/aircraft.ts';
import type { AirfieldFile } from '../../school/airfield.ts';
import type { School } from '../../school/school.ts';
import type { Wind } from '../../units/wind-text.ts';
import { flyableWords } from '../../words/cautions/flyable-words.ts';
import { gradeSentence } from '../../words/cautions/grade-sentences.ts';
import { pageSteps } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { requestSentence } from '../../words/refusals/request-words.ts';
import { settingKeys } from './grade-keys.ts';

/** What a build is asked to compute for, in place of what the lesson and the school say. */
export interface Choices {
  readonly airfield?: string | undefined;
  readonly runway?: string | undefined;
  readonly circuit?: Circuit | undefined;
  readonly wind?: Wind | undefined;
  /** m/s. */
  readonly gust?: number | undefined;
  /** K. */
  readonly temperature?: number | undefined;
  /** Pa. */
  readonly qnh?: number | undefined;
  readonly power?: Power | undefined;
}

/** What a packet is computed for. */
export interface Scenario {
  readonly request: PlanRequest;
  readonly aircraft: AircraftFile;
  readonly airfield: AirfieldFile;
  /** For the school's pages and messages. */
  readonly units: PageUnits;
  /** What the lesson shows on purpose. */
  readonly shows: FrontMatter['shows'];
  /** The day that the lesson asks for. */
  readonly day: FrontMatter['day'];
}

/** A setting of a lesson that cannot be computed: the front matter key it belongs to, and what would be right. */
export class ScenarioError extends Error {
  override readonly name: string = 'ScenarioError';
  readonly key: string;
  /** The keys it may come from, the likeliest first. */
  readonly keys: readonly string[];

  constructor(key: string, message: string, keys: readonly string[] = [key]) {
    super(message);
    this.key = key;
    this.keys = keys;
  }
}

/** A plan that is not to be flown, and so not printed. */
export class NotToBeFlownError extends ScenarioError {
  override readonly name = 'NotToBeFlownError';

  constructor(plan: Plan, { request, units }: { readonly request: PlanRequest; readonly units: PageUnits }) {
    const grade = 'not-to-be-flown';
    const keys = settingKeys(plan, grade);
    super(keys[0]!, gradeSentence(plan, grade, units, flyableWords(plan, request, units)), keys);
  }
}

/**
 * The aircraft a lesson is printed for: those asked for; else the lesson's own; else those of the lesson's classes
 * among the handbook's, else in the school's fleet. One whose own file has a mistake is left out: its file says so,
 * and no other takes its place. Throws ScenarioError where no aircraft is left.
 */
export function aircraftOf(
  school: School,
  lesson: FrontMatter,
  asked: readonly string[] = [],
): readonly string[] {
  const isMistaken = (id: string) => school.aircraftIds.includes(id) && !school.fleet.has(id);
  const named = asked.length > 0 ? asked : lesson.aircraft === undefined ? [] : [lesson.aircraft];
  if (named.length > 0) return named.filter((id) => !isMistaken(id));
  const handbook = school.handbook?.aircraft ?? [];
  const usual = handbook.length > 0 ? handbook : [school.defaults.aircraft];
  const ofClass = ofClasses(school, lesson, usual);
  if (ofClass.length > 0 || usual.some(isMistaken)) return ofClass;
  const others = ofClasses(school, lesson, [...school.fleet.keys()]);
  if (others.length > 0) return others;
  throw new ScenarioError(
    'class',
    `No aircraft of the school is ${classWords(lesson)}: add one to its fleet, or change the lesson's \`class\``,
  );
}

/** Those of the aircraft that belong to the lesson's classes. */
export function ofClasses(school: School, lesson: FrontMatter, ids: readonly string[]): readonly string[] {
  return ids.filter((id) => {
    const aircraft = school.fleet.get(id);
    return aircraft && (lesson.class ?? [aircraft.class]).includes(aircraft.class);
  });
}

function classWords(lesson: FrontMatter): string {
  return (lesson.class ?? []).join(' or ');
}

/**
 * What a lesson is computed for with one aircraft: what is asked for overrides the lesson's front matter, which
 * overrides the school's defaults. Throws ScenarioError for a name that the school does not have.
 */
export function scenarioOf(
  school: School,
  lesson: FrontMatter,
  aircraftId: string,
  choices: Choices,
): Scenario {
  const { defaults } = school;
  const aircraft = named('aircraft', aircraftId, school.fleet);
  checkClass(school, lesson, aircraft);
  const airfield = named(
    'airfield',
    choices.airfield ?? lesson.airfield ?? defaults.airfield,
    school.airfields,
  );
  const runway = runwayOf(airfield, choices.runway ?? lesson.runway ?? defaults.runway);
  const { height, spacing, bank, temperature, qnh } = lesson;
  return {
    aircraft,
    airfield,
    units: school.units,
    shows: lesson.shows,
    day: lesson.day,
    request: {
      aircraft,
      airfield,
      runway,
      approach: lesson.approach,
      power: choices.power ?? lesson.power ?? defaults.power,
      circuit: choices.circuit,
      wind: choices.wind ?? lesson.wind ?? defaults.wind,
      gust: choices.gust ?? (choices.wind || lesson.wind ? undefined : defaults.gust),
      temperature: choices.temperature ?? temperature ?? defaults.temperature,
      qnh: choices.qnh ?? qnh ?? defaults.qnh,
      height,
      spacing,
      bank,
      minimums: { ...school.minimums, mostTailwind: school.limits?.tailwind },
    },
  };
}

/**
 * Flies a scenario to be printed. Throws ScenarioError where it cannot be flown, and NotToBeFlownError for a plan that is
 * not to be flown, unless the lesson shows such a plan.
 */
export function planOf(scenario: Scenario): Plan {
  const plan = flownPlan(scenario);
  if (plan.grade !== 'not-to-be-flown' || scenario.shows === plan.grade) return plan;
  throw new NotToBeFlownError(plan, scenario);
}

/**
 * Flies a scenario. Throws ScenarioError where it cannot be flown, and NotToBeFlownError where it does not reach the spot:
 * whatever a lesson shows, no page is made of a flight that fails.
 */
export function flownPlan(scenario: Scenario): Plan {
  const { request } = scenario;
  try {
    const plan = planApproach({ ...request, steps: pageSteps(scenario.units) });
    if (plan.made) return plan;
    throw new NotToBeFlownError(plan, scenario);
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    const field = error.field.split('.')[0]!;
    // A figure of the aircraft that would do in less wind: where a wind was asked for or typed, the wind is to blame.
    const keys = error.reason.code === 'no-speed-to-hold-off' ? [field, 'wind'] : [field];
    const words = requestSentence(error, scenario.units);
    throw new ScenarioError(field, `${request.aircraft.name}: ${words}`, keys);
  }
}

function checkClass(school: School, lesson: FrontMatter, aircraft: AircraftFile): void {
  if (lesson.class?.includes(aircraft.class) ?? true) return;
  const right = ofClasses(school, lesson, [...school.fleet.keys()]).map((id) => `\`${id}\``);
  throw new ScenarioError(
    lesson.aircraft === undefined ? 'class' : 'aircraft',
    `${aircraft.name} is ${aircraft.class}, and this lesson is for ${classWords(lesson)} aircraft: ` +
      (right.length > 0 ? `it can be built for ${right.join(', ')}` : 'the school has none'),
  );
}

function named<T>(kind: 'aircraft' | 'airfield', id: string, known: ReadonlyMap<string, T>): T {
  const found = known.get(id);
  if (found) return found;
  const ids = [...known.keys()];
  throw new ScenarioError(
    kind,
    `The school has no ${kind} \`${id}\`${didYouMean(id, ids)} (it has ${ids.map((name) => `\`${name}\``).join(', ')})`,
  );
}

function runwayOf(airfield: AirfieldFile, name: string): Runway {
  const found = airfield.runways.find((runway) => runway.name === name);
  if (found) return found;
  const names = airfield.runways.map((runway) => runway.name);
  throw new ScenarioError(
    'runway',
    `${airfield.name} has no runway \`${name}\`${didYouMean(name, names)} (it has ${names.map((known) => `\`${known}\``).join(', ')})`,
  );
}
