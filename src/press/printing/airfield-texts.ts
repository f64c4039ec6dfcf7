import { join } from 'node:path';
import type { VFile } from 'vfile';
import type { School } from '../../school/school.ts';

/** The airfields as they were typed, by name: see `packetKey`. */
export function airfieldTexts(files: readonly VFile[], school: School): Record<string, string> {
  const folder = join(school.folder, 'airfields');
  const texts = files.filter(({ dirname }) => dirname === folder).map((file) => [file.stem, String(file)]);
  return Object.fromEntries(texts);
}
