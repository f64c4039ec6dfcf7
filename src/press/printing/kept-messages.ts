import { basename } from 'node:path';
import type { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import type { KeptMessage } from './ledger.ts';

/** A message of a lesson as plain data. */
export function keptMessage({ file, reason, ruleId, source, place, fatal }: VFileMessage): KeptMessage {
  const at = place && ('start' in place ? place : { start: place, end: undefined });
  const note = fatal === undefined || fatal === null ? true : undefined;
  return { file: basename(file ?? ''), reason, rule: ruleId, source, start: at?.start, end: at?.end, note };
}

/** Says it again. It was a warning or a note: a packet with an error is not printed. */
export function sayAgain({ reason, rule, source, start, end, note }: KeptMessage, file: VFile): void {
  const place = start && (end ? { start, end } : start);
  const message = file.message(reason, { place, ruleId: rule, source });
  if (note) message.fatal = undefined;
}
