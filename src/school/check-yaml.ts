import type { VFile } from 'vfile';
import type { z } from 'zod';
import { hasErrors } from '../messages/failures.ts';
import { isAbsent } from './fields.ts';
import { type DataPath, YamlSource } from './yaml-source.ts';

/** A file that was checked: its value where there is no error, and its source, for further messages. */
export interface Checked<T> {
  readonly source: YamlSource;
  readonly value?: T;
}

/** Checks a YAML file against a schema; every message lands on the file. Undefined where it is not YAML. */
export function checkYaml<T>(file: VFile, schema: z.ZodType<T>): Checked<T> | undefined {
  const source = YamlSource.open(file);
  if (!source) return undefined;
  const result = schema.safeParse(source.data);
  for (const issue of result.success ? [] : result.error.issues) report(source, issue);
  const sound = result.success && !hasErrors(file);
  return sound ? { source, value: result.data } : { source };
}

function report(source: YamlSource, issue: z.core.$ZodIssue): void {
  const path = issue.path as DataPath;
  if (issue.code === 'unrecognized_keys') {
    const advice = issue.message.split('\n');
    issue.keys.forEach((key, place) => {
      const where = path.length === 0 ? 'this file' : sectionName(path);
      source.report(
        `\`${key}\` is not a key of ${where}${advice[place]}`,
        'unknown-key',
        [...path, key],
        'key',
      );
    });
    return;
  }
  const key = path.at(-1);
  if (path.length > 0 && isAbsent(valueAt(source.data, path))) {
    const missing = source.has(path) ? 'has no value' : 'is missing';
    const example = typeof key === 'string' ? `${key}: ${issue.message}` : issue.message;
    source.report(`${placeName(path)} ${missing}: write it as \`${example}\``, 'missing-key', path);
    return;
  }
  const rule = issue.code === 'custom' ? (issue.params?.rule as string | undefined) : undefined;
  const place = path.length === 0 ? '' : `${placeName(path)}: `;
  source.report(`${place}${issue.message}`, rule ?? 'value', path);
}

function valueAt(data: unknown, path: DataPath): unknown {
  return path.reduce<unknown>((from, step) => {
    if (Array.isArray(from)) return from[step as number];
    const own = typeof from === 'object' && from !== null && Object.hasOwn(from, step);
    return own ? (from as Record<string | number, unknown>)[step] : undefined;
  }, data);
}

/** `height` in `runways` 1, `obstacles` 2 - counting from 1, as people do. */
function placeName(path: DataPath): string {
  const names = nameSteps(path);
  const last = names.pop() ?? 'this file';
  return names.length === 0 ? last : `${last} in ${names.join(', ')}`;
}

function sectionName(path: DataPath): string {
  return nameSteps(path).join(', ');
}

function nameSteps(path: DataPath): string[] {
  const names: string[] = [];
  for (const step of path) {
    if (typeof step === 'number') names.push(`${names.pop() ?? ''} ${step + 1}`.trim());
    else names.push(`\`${step}\``);
  }
  return names;
}
