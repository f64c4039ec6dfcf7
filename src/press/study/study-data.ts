import type { Edition, PacketContext } from '../../../components/context.ts';
import { ownFile } from '../../../components/own-file.ts';
import type { PlanRequest } from '../../flight/terms/plan.ts';
import type { CheckedUse } from '../../lesson/check-directives.ts';
import type { Form } from '../../lesson/component.ts';
import type { Day } from '../../lesson/day.ts';
import type { School } from '../../school/school.ts';

/** A use of a directive that the page makes again, or whose questions are answered in it. */
export interface StudyUse {
  /** Its place in the lesson's list: the value of `data-live` on what it rendered. */
  readonly n: number;
  readonly name: string;
  readonly form: Form;
  /** As its schema gave them. */
  readonly attributes: unknown;
  readonly label: string;
  readonly ordinal: number;
}

/** The id of printed questions. */
export function questionsId({ name, ordinal }: Pick<StudyUse, 'name' | 'ordinal'>): string {
  return `${name}-${ordinal}`;
}

/** What the page of one packet computes from, as plain JSON. */
export interface StudyData {
  readonly request: PlanRequest;
  readonly school: StudySchool;
  /** The airfield's local procedures. */
  readonly rules: readonly string[];
  /** The day that the lesson asks for. */
  readonly day?: Day | undefined;
  readonly edition: Edition;
  readonly drawingRoom: PacketContext['drawingRoom'];
  readonly uses: readonly StudyUse[];
}

/** The part of the school that a page needs: nothing about the other aircraft, the other fields, or where its files are. */
export interface StudySchool extends Pick<School, 'name' | 'cautions' | 'minimums' | 'units' | 'grading'> {
  readonly fleet: Entries<School['fleet']>;
  readonly airfields: Entries<School['airfields']>;
  readonly faults: Entries<School['faults']>;
}

type Entries<M> = M extends ReadonlyMap<infer Key, infer Value> ? readonly (readonly [Key, Value])[] : never;

export interface StudySource {
  readonly context: PacketContext;
  /** The airfield's local procedures. */
  readonly rules: readonly string[];
  /** The day that the lesson asks for. */
  readonly day?: Day | undefined;
  /** The lesson's, in its order. */
  readonly uses: readonly CheckedUse<PacketContext>[];
}

export function studyData({ context, rules, day, uses }: StudySource): StudyData {
  const { request, school, edition, drawingRoom } = context;
  const { name, cautions, minimums, units, grading } = school;
  const own = ownFile(context);
  return {
    request,
    school: {
      name,
      cautions,
      minimums,
      units,
      grading,
      fleet: own ? [[own.id, own.file]] : [],
      airfields: [...school.airfields].filter(([, file]) => file.name === request.airfield.name),
      faults: [...school.faults],
    },
    rules,
    day,
    edition,
    drawingRoom,
    uses: uses.flatMap(({ component, attributes, label, ordinal }, n) => {
      if (component.onScreen !== 'made-again' && component.onScreen !== 'answered') return [];
      return [{ n, name: component.name, form: component.form, attributes, label, ordinal }];
    }),
  };
}
