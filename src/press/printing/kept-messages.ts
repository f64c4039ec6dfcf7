import { basename } from 'node:path';
import type { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import type { KeptMessage } from './ledger.ts';

/** A message of a lesson as plain data. */
export function keptMessage({ file, reason, ruleId, source, place }: VFileMessage): KeptMessage {
  const at = place && ('start' in place ? place : { start: place, end: undefined });
  return { file: basename(file ?? ''), reason, rule: ruleId, source, start: at?.start, end: at?.end };
}

/** Says it again. It was a warning: a packet with an error is not printed. */
export function sayAgain({ reason, rule, source, start, end }: KeptMessage, file: VFile): void {
  const place = start && (end ? { start, end } : start);
  file.message(reason, { place, ruleId: rule, source });
}
