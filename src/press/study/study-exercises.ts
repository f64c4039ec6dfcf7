import type { ElementContent, Element as HastElement } from 'hast';
import type { PacketContext } from '../../../components/context.ts';
import { type DrawnExercise, drawExercises } from '../../../components/exercises/draw-exercises.ts';
import { exerciseItem } from '../../../components/exercises/exercise-item.ts';
import { questionSetting } from '../../../components/exercises/question-setting.ts';
import { hasClass } from '../formats/document-tree.ts';
import { element, pageElements } from './page-nodes.ts';
import type { StudyUse } from './study-data.ts';

const letters = 'abcd';

/**
 * Makes the printed questions answerable. The answers are not in the page: the same questions are drawn again from the
 * same seed once the student has chosen, and held against the words on the page.
 */
export function openExercises({ ordinal, attributes }: StudyUse, printed: () => PacketContext): void {
  const { count, seed } = attributes as { count: number; seed: number };
  let drawn: readonly DrawnExercise[] | undefined;
  const exercise = (place: number) => {
    drawn ??= drawExercises(questionSetting(printed()), count, seed);
    return drawn[place];
  };
  const items = document.querySelectorAll(`#exercises-${ordinal} > .exercise-list > .exercise`);
  items.forEach((item, place) => {
    openItem(item, `study-exercise-${ordinal}-${place + 1}`, () =>
      workedOut(item, exercise(place), printed()),
    );
  });
}

function openItem(item: Element, name: string, workOut: () => Worked | undefined): void {
  const choices = item.querySelector(':scope > .choices');
  if (!choices) return;
  const answer = element('div', 'study-answer');
  answer.setAttribute('role', 'status');
  [...choices.children].forEach((choice, place) => {
    const radio = element('input', '');
    radio.type = 'radio';
    radio.name = name;
    const label = element('label', '', radio, ...choice.childNodes);
    choice.replaceChildren(label);
    radio.addEventListener('change', () => {
      answer.replaceChildren('Being worked out …');
      choices.after(answer);
      // The words are painted first: drawing the questions again may take a second.
      setTimeout(() => {
        if (radio.checked) answer.replaceChildren(...answerWords(workOut(), place));
      }, 30);
    });
  });
}

interface Worked {
  /** Place of the right choice. */
  readonly right: number;
  readonly lines: readonly Element[];
}

function answerWords(worked: Worked | undefined, chosen: number): (Element | string)[] {
  if (!worked) return ['The worked answer could not be found on this page: ask your instructor.'];
  const { right, lines } = worked;
  const verdict =
    chosen === right
      ? `Right: ${letters[chosen]}.`
      : `Not right: you chose ${letters[chosen]}, and ${letters[right]} is right.`;
  return [element('p', 'study-verdict', verdict), ...lines.map((line) => line.cloneNode(true) as Element)];
}

/** As the instructor's edition has it; undefined where the question is not the one on the page. */
function workedOut(
  item: Element,
  exercise: DrawnExercise | undefined,
  context: PacketContext,
): Worked | undefined {
  if (!exercise) return undefined;
  const made = exerciseItem(exercise, { ...context, edition: 'instructor' });
  const question = made.children.filter(isNamed('p'));
  const worked = made.children.filter(
    (child): child is HastElement => isElement(child) && hasClass(child, 'worked-answer'),
  );
  const [asked] = pageElements(question);
  if (asked?.textContent !== item.querySelector(':scope > p')?.textContent) return undefined;
  return { right: exercise.answer, lines: pageElements(worked.flatMap(({ children }) => children)) };
}

const isElement = (node: ElementContent): node is HastElement => node.type === 'element';
const isNamed = (tag: string) => (node: ElementContent) => isElement(node) && node.tagName === tag;
