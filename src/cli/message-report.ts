import type { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import { codeFrame } from './code-frame.ts';

/**
 * The messages of some files as a person reads them in a terminal, each with its line of the source, and how many
 * there are.
 */
export function messageReport(files: readonly VFile[]): string {
  const spoken = files.filter((file) => file.messages.length > 0);
  return [...spoken.map(fileReport), `${countWords(files)}\n`].join('\n');
}

function fileReport(file: VFile): string {
  const place = ({ line, column }: VFileMessage) => [line ?? 0, column ?? 0] as const;
  const messages = [...file.messages].sort((a, b) => {
    const [[lineA, columnA], [lineB, columnB]] = [place(a), place(b)];
    return lineA - lineB || columnA - columnB;
  });
  const lines = messages.flatMap((message) => [
    `  ${message.line ?? 1}:${message.column ?? 1}  ${kindOf(message)}  ${message.reason}  (${message.ruleId ?? 'unknown'})`,
    ...frameOf(message, String(file)).map((line) => `      ${line}`),
  ]);
  return `${[file.path, ...lines].join('\n')}\n`;
}

function kindOf({ fatal }: VFileMessage): 'error' | 'warning' | 'note' {
  return fatal ? 'error' : fatal === false ? 'warning' : 'note';
}

function frameOf({ line, column, place }: VFileMessage, source: string): string[] {
  if (line === undefined || column === undefined) return [];
  const end = place && 'end' in place ? place.end : undefined;
  const sameLine = end?.line === line ? end.column : Number.POSITIVE_INFINITY;
  return codeFrame(source, { line, column, end: end ? sameLine : column + 1 });
}

function countWords(files: readonly VFile[]): string {
  const messages = files.flatMap((file) => file.messages);
  const [errors, warnings, notes] = (['error', 'warning', 'note'] as const).map(
    (kind) => messages.filter((message) => kindOf(message) === kind).length,
  ) as [number, number, number];
  const spoken = files.filter((file) => file.messages.length > 0).length;
  const noted = notes > 0 ? `, ${counted(notes, 'note')}` : '';
  const counts = `${counted(errors, 'error')}, ${counted(warnings, 'warning')}${noted}`;
  if (messages.length === 0) return `${counts}: ${counted(files.length, 'file')} checked`;
  return `${counts} in ${spoken} of ${counted(files.length, 'file')}`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
