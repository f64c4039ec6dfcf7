import { z } from 'zod';
import { quantityListForm } from '../../src/school/written-form.ts';
import { parseQuantity, QuantityError } from '../../src/units/quantity.ts';

/** No more circles than this are drawn side by side. */
const most = 5;
const steepest = (75 * Math.PI) / 180;

/** Banks with their units and a space between them, `20deg 30deg 45deg`, in rad; rising. */
export function banks(example: string) {
  const read = z.string().transform((text, context): number[] => {
    const words = text.split(/\s*,\s*|\s+(?=\d)/).filter((word) => word.trim() !== '');
    try {
      if (words.length === 0 || words.length > most) {
        throw new QuantityError(`write 1 to ${most} banks such as \`${example}\``);
      }
      return words.map(bank).sort((a, b) => a - b);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      context.addIssue({ code: 'custom', message: error.message });
      return z.NEVER;
    }
  });
  return read.meta({ ...quantityListForm('angle', '1deg', '75deg'), sample: example });
}

function bank(word: string): number {
  const angle = parseQuantity(word, 'angle', '30deg');
  if (angle > 0 && angle <= steepest + 1e-9) return angle;
  throw new QuantityError(`\`${word}\` is no bank to turn at: write 1deg to 75deg, such as \`30deg\``);
}
