import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { inject } from 'vitest';

/** What one test file has made, or could not make, for all those that ask for the same. */
interface Outcome<T> {
  readonly made?: T;
  readonly failed?: string;
}

/** Makes something in JSON once for all files of a run: the first to ask makes it, while the others wait for it. */
export async function madeOnce<T>(name: string, make: () => Promise<T>): Promise<T> {
  const path = join(inject('sharedFolder'), name);
  const isFirst = await mkdir(`${path}.begun`).then(
    () => true,
    () => false,
  );
  if (isFirst) {
    const outcome: Outcome<T> = await make().then(
      (made) => ({ made }),
      (error) => ({ failed: String(error) }),
    );
    await writeFile(`${path}.part`, JSON.stringify(outcome));
    await rename(`${path}.part`, `${path}.json`);
  }
  for (;;) {
    const text = await readFile(`${path}.json`, 'utf8').catch(() => undefined);
    if (text === undefined) {
      await setTimeout(50);
      continue;
    }
    const { made, failed } = JSON.parse(text) as Outcome<T>;
    if (failed !== undefined) throw new Error(failed);
    return made!;
  }
}
