import { z } from 'zod';
import { limitsBy, within } from '../../src/school/fields.ts';
import { quantityListForm, type WrittenForm } from '../../src/school/written-form.ts';
import { parseQuantity, QuantityError } from '../../src/units/quantity.ts';

/** No table with more winds than this is ever read. */
const most = 12;

/** Speeds with their units and a space between them, `0kt 5kt −5kt`, in m/s. */
export function speeds(example: string) {
  const read = (word: string) => parseQuantity(word, 'speed', '5kt');
  return listOf('speeds', example, read, quantityListForm('speed'));
}

/** How far a wind may turn, up to 90 degrees to either side: `0deg 20deg −10deg`, in rad. */
export function veers(example: string) {
  const [low, high, one] = ['-90 deg', '90 deg', '20deg'] as const;
  const angle = (word: string) => parseQuantity(word, 'angle', one);
  const read = within(limitsBy(angle, low, high), one, angle);
  return listOf('angles', example, read, quantityListForm('angle', low, high));
}

function listOf(what: string, example: string, readOne: (word: string) => number, form: WrittenForm) {
  const read = z.string().transform((text, context): number[] => {
    const words = text.split(/\s*,\s*|\s+(?=[\d+\-−])/).filter((word) => word.trim() !== '');
    try {
      if (words.length === 0 || words.length > most) {
        throw new QuantityError(`write 1 to ${most} ${what} such as \`${example}\``);
      }
      return words.map((word) => readOne(word));
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      context.addIssue({ code: 'custom', message: error.message });
      return z.NEVER;
    }
  });
  return read.meta({ ...form, sample: example });
}
