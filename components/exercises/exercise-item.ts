import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Edition } from '../context.ts';
import type { Exercise, ExerciseTable } from './exercise.ts';

const letters = 'abcd';
/** Choices no longer than this stand two on a line. */
const shortChoice = 24;
/** Of the small type of a worked answer, as many go on a line, and as many lines into one writing line. */
const signsOnLine = 84;
const linesInRule = 2;
const rules = { least: 2, most: 3 } as const;

/**
 * One numbered question. The student's has ruled lines to write on; in the instructor's the worked answer stands in a
 * room of the same height, so that both editions break their pages alike.
 */
export function exerciseItem(exercise: Exercise, edition: Edition): Element {
  const { question, table, choices, answer } = exercise;
  const worked = workedLines(exercise);
  const count = rulesFor(worked);
  const room = { style: `--rules:${count}` };
  const isInstructors = edition === 'instructor';
  return h('li', { className: ['exercise'] }, [
    h('p', question),
    ...(table ? [exerciseTable(table)] : []),
    h(
      'ol',
      {
        className: choices.every(({ text }) => text.length <= shortChoice)
          ? ['choices', 'short']
          : ['choices'],
        type: 'a',
      },
      choices.map(({ text }, i) =>
        h('li', [
          text,
          ...(isInstructors && i === answer ? [h('b', { className: ['right-choice'] }, ' – right')] : []),
        ]),
      ),
    ),
    isInstructors
      ? h('div', { className: ['worked-answer'], ...room }, worked.map(workedLine))
      : h(
          'div',
          { className: ['writing-lines'], ariaHidden: 'true', ...room },
          Array.from({ length: count }, () => h('span')),
        ),
  ]);
}

interface Worked {
  readonly lead: string;
  readonly text: string;
}

/** The steps run on; the last one is the answer. Then how one comes to each of the wrong choices. */
function workedLines({ working, choices, answer }: Exercise): Worked[] {
  const steps = working.slice(0, -1).join(' ');
  const wrong = choices.flatMap(({ fault }, i) => (fault === undefined ? [] : [`${letters[i]}: ${fault}`]));
  return [
    { lead: 'Worked. ', text: `${steps} ` },
    { lead: `${letters[answer]} is right: `, text: working.at(-1)! },
    { lead: 'Wrong: ', text: `${wrong.join('; ')}.` },
  ];
}

function workedLine({ lead, text }: Worked): Element {
  return h('p', [h('b', lead), text]);
}

function rulesFor(worked: readonly Worked[]): number {
  const lines = worked.reduce(
    (sum, { lead, text }) => sum + Math.ceil((lead.length + text.length) / signsOnLine),
    0,
  );
  return Math.min(rules.most, Math.max(rules.least, Math.ceil(lines / linesInRule)));
}

function exerciseTable({ head, rows }: ExerciseTable): Element {
  return h('table', { className: ['exercise-table'] }, [
    h('thead', [
      h(
        'tr',
        head.map((text) => h('th', { scope: 'col' }, text)),
      ),
    ]),
    h(
      'tbody',
      rows.map(([name, ...cells]) =>
        h('tr', [h('th', { scope: 'row' }, name ?? ''), ...cells.map((cell) => h('td', cell))]),
      ),
    ),
  ]);
}
