import { h } from 'hastscript';
import type { Edition } from '../../../components/context.ts';
import { simplifications } from '../../flight/questions/simplifications.ts';
import type { PlanRequest } from '../../flight/terms/plan.ts';
import { flyableWords } from '../../words/cautions/flyable-words.ts';
import { makeTableRooms, setText } from '../formats/document-tree.ts';
import type { PageDocument } from '../formats/page-document.ts';
import { pageCss } from '../paper/page-style.ts';
import type { Paper } from '../paper/paper.ts';
import { gradeBands, pageBand, screenBand } from './grade-bands.ts';
import { type LessonInput, lessonParts } from './lesson-parts.ts';
import { subjectLine } from './setting.ts';
import { editionNames, ruledMargin, settingList } from './sheet-parts.ts';
import { workings } from './workings.ts';

/** What one packet is made from. */
export interface PacketInput extends LessonInput {
  /** The edition that `body` was rendered for. */
  readonly edition: Edition;
  /** What the plan was asked for: it is flown again for the size of what the model leaves out. */
  readonly request: PlanRequest;
  readonly paper: Paper;
  /** The date of the inputs. */
  readonly date: Date;
  readonly fingerprint: string;
}

/**
 * One lesson, computed for one aircraft and one wind, as a document: the first page says what it is computed for and
 * what to beware of, the last how its figures were worked out.
 */
export function packetDocument(input: PacketInput): PageDocument {
  const { title, edition, plan, request, school, units, paper, date, fingerprint } = input;
  const day = date.toISOString().slice(0, 10);
  const last = workings({ plan, sizes: simplifications(request) }, units);
  makeTableRooms(last.children);
  const furniture = {
    title,
    subject: subjectLine(plan, units),
    origin: `${school.name} · ${editionNames[edition]} · ${day} · inputs ${fingerprint}`,
    band: pageBand(plan, units),
  };
  const content = h('body', { class: `edition-${edition}` }, [
    ...(edition === 'student' ? [ruledMargin(paper)] : []),
    ...screenBand(plan, units),
    ...gradeBands(plan, units, flyableWords(plan, request, units)),
    h('header', { class: 'masthead' }, [
      h('p', { class: 'school' }, [
        h('span', school.name),
        h('span', `${editionNames[edition]} · ${day} · inputs ${fingerprint}`),
      ]),
      h('h1', title),
      settingList(plan, units),
    ]),
    h('main', [...lessonParts(input), last]),
  ]);
  setText(content.children);
  const forWhom = edition === 'instructor' ? `, ${editionNames.instructor.toLowerCase()}` : '';
  return {
    title: `${title} — ${furniture.subject}${forWhom}`,
    css: pageCss(paper, furniture),
    body: content,
    paper,
    date,
  };
}
