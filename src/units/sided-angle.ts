import { parseQuantity, QuantityError } from './quantity.ts';

/** The letters of an angle counted two ways from zero, the positive one first. */
export type Sides = 'EW' | 'NS';

/**
 * An angle with its side (`2 deg W`, `51.2 deg N`) in rad, east and north positive.
 * @throws QuantityError where the side is missing: a sign alone is too easily misread.
 */
export function parseSidedAngle(text: string, sides: Sides): number {
  const trimmed = text.trim();
  const [positive, negative] = [sides[0]!, sides[1]!];
  const example = sides === 'EW' ? '2 deg W' : '51.2 deg N';
  const parts = /^(.*?)\s*([a-z])$/isu.exec(trimmed);
  const side = parts?.[2]?.toUpperCase();
  if (!parts || (side !== positive && side !== negative)) {
    throw new QuantityError(
      `\`${trimmed}\` does not end in ${positive} or ${negative}: write it as \`${example}\``,
    );
  }
  const size = parseQuantity(parts[1]!, 'angle', example);
  if (size < 0) throw new QuantityError(`\`${trimmed}\` has a sign and a side: write it as \`${example}\``);
  return side === negative && size > 0 ? -size : size;
}
