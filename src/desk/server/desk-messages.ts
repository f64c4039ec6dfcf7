import { relative, sep } from 'node:path';
import type { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import type { DeskMessage } from '../api.ts';

/** The messages of a file in the order of their places. `path`: the file's path in the school. */
export function messagesOf(file: VFile, path: string): DeskMessage[] {
  return file.messages
    .map((message) => ({ path, ...wordsOf(message), ...placeOf(message) }))
    .sort((a, b) => a.line - b.line || a.column - b.column);
}

/** Those of several files of a school, whose paths begin with its folder. */
export function messagesOfAll(files: readonly VFile[], folder: string): DeskMessage[] {
  return files.flatMap((file) => messagesOf(file, relative(folder, file.path).split(sep).join('/')));
}

/** Something chosen is not possible, or there is something to know about it: `choice` is the key of `PageChoices`. */
export function choiceMessage(
  choice: string,
  reason: string,
  severity: DeskMessage['severity'] = 'error',
  ruleId = 'choice',
): DeskMessage {
  return {
    choice,
    reason,
    severity,
    ruleId,
    line: 1,
    column: 1,
    endLine: 1,
    endColumn: 1,
  };
}

function wordsOf({
  reason,
  fatal,
  ruleId,
}: VFileMessage): Pick<DeskMessage, 'reason' | 'severity' | 'ruleId'> {
  const severity = fatal ? 'error' : fatal === false ? 'warning' : 'note';
  return { reason, severity, ruleId: ruleId ?? 'unknown' };
}

function placeOf({ place, line = 1, column = 1 }: VFileMessage) {
  const end = place && 'end' in place ? place.end : undefined;
  return { line, column, endLine: end?.line ?? line, endColumn: end?.column ?? column };
}
