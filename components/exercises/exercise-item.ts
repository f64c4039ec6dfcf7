import type { Element } from 'hast';
import { h } from 'hastscript';
import type { PacketContext } from '../context.ts';
import { mostLines, points, type Setting, textWidth } from '../margin.ts';
import type { Exercise, ExerciseTable } from './exercise.ts';

const letters = 'abcd';
/** Choices no longer than this are set two on a line. */
const shortChoice = 24;
/** mm and lines, as the page's style sets them: a writing line, the small type of a worked answer, the list's indent. */
const ruleHeight = 9;
const leastRules = 2;
const answerType = { size: points(8.3), line: points(10.6), above: points(2) } as const;
const listIndent = 6.5;

/**
 * One numbered question. The student's has ruled lines to write on; the instructor's has the worked answer in a room
 * of the same height, so that both editions break their pages alike.
 */
export function exerciseItem(exercise: Exercise, context: PacketContext): Element {
  const { question, table, choices, answer } = exercise;
  const worked = workedLines(exercise);
  const width = textWidth(context) - listIndent;
  const count = rulesFor(worked, { width, size: answerType.size, measure: context.board.measure });
  const room = { style: `--rules:${count}` };
  const isInstructors = context.edition === 'instructor';
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

/** The steps in one run, the last of them the answer; then how one arrives at each of the wrong choices. */
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

/** As many writing lines as the worked answer is high, and never so few that there is no room to work it out. */
function rulesFor(worked: readonly Worked[], setting: Setting): number {
  const lines = worked.reduce((sum, { lead, text }) => sum + mostLines(lead + text, setting), 0);
  return Math.max(leastRules, Math.ceil((lines * answerType.line + answerType.above) / ruleHeight));
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
