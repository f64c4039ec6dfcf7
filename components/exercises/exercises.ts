import { h } from 'hastscript';
import { z } from 'zod';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { parsed } from '../../src/school/fields.ts';
import { wholeNumberForm } from '../../src/school/written-form.ts';
import { parseNumber, QuantityError } from '../../src/units/quantity.ts';
import { sourceWords } from '../../src/words/approaches/approach-words.ts';
import type { PacketContext } from '../context.ts';
import { drawExercises } from './draw-exercises.ts';
import { exerciseItem } from './exercise-item.ts';
import { questionSetting } from './question-setting.ts';

const attributes = z.strictObject({
  count: whole(1, 8, '4').describe('How many questions').prefault('4'),
  seed: whole(0, 999_999, '7').describe('Another one draws other questions').prefault('1'),
});

export const exercises = defineComponent<PacketContext, typeof attributes>({
  name: 'exercises',
  form: 'leaf',
  onScreen: 'answered',
  summary:
    'Questions drawn from this flight, with choices; the student has lines to write on, the instructor the worked answers.',
  attributes,
  example: '::exercises{count=4 seed=7}',
  render: ({ attributes: { count, seed }, context, ordinal }) => {
    const drawn = drawExercises(questionSetting(context), count, seed);
    if (drawn.length < count) {
      const most = drawn.length === 0 ? 'take `::exercises` out' : `write \`count=${drawn.length}\``;
      throw new DirectiveError(
        `This flight gives ${drawn.length} questions with \`seed=${seed}\`, not ${count}: ${most}, or try another \`seed\``,
      );
    }
    return [
      h('section', { className: ['exercises'], id: `exercises-${ordinal}`, ariaLabel: 'Exercises' }, [
        h(
          'p',
          { className: ['source'] },
          `One choice of each question is right; the others come from common faults. A wind or a height that a question names takes the place of the one in these pages; it may be one to reckon with and not to practise in.`,
        ),
        h(
          'ol',
          { className: ['exercise-list'] },
          drawn.map((exercise) => exerciseItem(exercise, context)),
        ),
        h('p', { className: ['source'] }, sourceWords(context.plan, context.units)),
      ]),
    ];
  },
});

function whole(low: number, high: number, example: string) {
  const read = (text: string): number => {
    const value = parseNumber(text, example);
    if (Number.isInteger(value) && value >= low && value <= high) return value;
    throw new QuantityError(
      `\`${text}\` is not a whole number from ${low} to ${high}: write one such as \`${example}\``,
    );
  };
  return parsed(example, read, wholeNumberForm(low, high));
}
