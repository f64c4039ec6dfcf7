import type { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import { showable } from './hidden-character.ts';

type Place = NonNullable<VFileMessage['place']>;

/** An error on a file: `fatal`, so that whoever reads it gets no value. */
export function fail(file: VFile, reason: string, ruleId: string, place?: Place): VFileMessage {
  const message = file.message(showable(reason), { place, ruleId, source: 'chalkwing' });
  message.fatal = true;
  return message;
}

/** True where any message of the file is an error. */
export function hasErrors(file: VFile): boolean {
  return file.messages.some((message) => message.fatal);
}
