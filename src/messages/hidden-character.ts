/**
 * Why a character may not be in a lesson or a school's file, and what to do; undefined for one that may. Not allowed:
 * control characters, those that turn the direction of the text after them (Unicode Standard Annex 9, table of
 * explicit formatting characters: they can make `210` read `012`), halves of surrogate pairs, and the mark that
 * replaces bytes that are not UTF-8.
 */
export function whyHidden(character: string): string | undefined {
  const point = character.codePointAt(0)!;
  const name = `U+${point.toString(16).toUpperCase().padStart(4, '0')}`;
  if (point === 0xfffd)
    return 'Here a character could not be read (the sign of it is U+FFFD): save the file as UTF-8, and type the character anew';
  if (point >= 0xd800 && point <= 0xdfff)
    return `Here stands half a character (${name}): take it out and type the character anew`;
  if ((point >= 0x202a && point <= 0x202e) || (point >= 0x2066 && point <= 0x2069))
    return `Here stands a character that cannot be seen (${name}) and turns the direction of what follows, so that figures read otherwise than they are: take it out`;
  const isControl =
    (point < 0x20 && point !== 0x09 && point !== 0x0a && point !== 0x0d) || (point >= 0x7f && point < 0xa0);
  return isControl
    ? `Here stands a control character (${name}), which cannot be printed: take it out`
    : undefined;
}

/** The first character of a text that may not be in it, and why; undefined where all may. */
export function firstHidden(text: string): string | undefined {
  for (const character of text) {
    const why = whyHidden(character);
    if (why !== undefined) return why;
  }
  return undefined;
}

/**
 * A text that is safe to print in a terminal: hidden characters are written as their numbers, and long quotations are
 * cut short.
 */
export function showable(text: string): string {
  const shown = Array.from(text, (character) =>
    character !== '\n' && whyHidden(character) !== undefined && character !== '\ufffd'
      ? `\\u{${character.codePointAt(0)!.toString(16)}}`
      : character,
  ).join('');
  return shown.replace(/`([^`]{200})[^`]+`/g, '`$1…`');
}
