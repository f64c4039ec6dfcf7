import type { PacketContext } from '../../../components/context.ts';
import { makeAgain } from './make-again.ts';
import { element } from './page-nodes.ts';
import { questionsId, type StudyUse } from './study-data.ts';

const letters = 'abcd';
const questions = '.exercise-list > .exercise';

/**
 * Makes printed questions answerable. The answers are not in the page: once the student has chosen, the same
 * questions are made again as the instructor has them, and compared with the words on the page.
 */
export function openExercises(use: StudyUse, printed: () => PacketContext): void {
  let made: readonly Element[] | undefined;
  const instructors = (place: number) => {
    made ??= (makeAgain(use, { ...printed(), edition: 'instructor' }).elements ?? []).flatMap((each) => [
      ...each.querySelectorAll(questions),
    ]);
    return made[place];
  };
  const id = questionsId(use);
  document.querySelectorAll(`#${id} > ${questions}`).forEach((item, place) => {
    openItem(item, `study-${id}-${place + 1}`, () => workedOut(item, instructors(place)));
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

/** Undefined where the instructor's question is not the one on the page. */
function workedOut(item: Element, instructors: Element | undefined): Worked | undefined {
  const question = ':scope > p';
  if (!instructors) return undefined;
  if (instructors.querySelector(question)?.textContent !== item.querySelector(question)?.textContent)
    return undefined;
  const right = [...instructors.querySelectorAll(':scope > .choices > *')].findIndex((choice) =>
    choice.querySelector('.right-choice'),
  );
  return { right, lines: [...instructors.querySelectorAll(':scope > .worked-answer > *')] };
}
