import { readFile, realpath } from 'node:fs/promises';
import { isAbsolute, join, relative, sep } from 'node:path';
import { Refusal } from './refusal.ts';

/**
 * A PDF below the folder for packets. Throws a `Refusal` for any other file, and for one that a link leads out of the
 * folder.
 */
export async function printedFile(out: string, path: string): Promise<Buffer> {
  const steps = path.split('/');
  const isPlain = steps.every((step) => step !== '' && !step.startsWith('.') && !/[\p{Cc}\\%:]/u.test(step));
  if (!isPlain || !path.endsWith('.pdf'))
    throw new Refusal(403, 'Only PDFs in the folder for packets are shown.');
  try {
    const [root, file] = await Promise.all([realpath(out), realpath(join(out, path))]);
    const way = relative(root, file);
    if (way.split(sep)[0] === '..' || isAbsolute(way) || !way.endsWith('.pdf'))
      throw new Refusal(403, `\`${path}\` leads out of the folder for packets.`);
    return await readFile(file);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(404, `There is no \`${path}\`: print the lesson first.`);
  }
}
