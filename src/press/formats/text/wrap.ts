/** Where a line may end; a no-break space keeps its two words on one line. */
const breaks = /[ \t\n]+/;

/**
 * Sets words in lines of at most `width` characters; a longer word gets a line of its own. `hanging`: put before
 * every line but the first.
 */
export function wrap(text: string, width: number, hanging = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(breaks).filter((each) => each !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    const room = lines.length === 0 ? width : width - hanging.length;
    if (line === '' || longer.length <= room) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  lines.push(line);
  return lines.join(`\n${hanging}`).replaceAll('\u00a0', ' ');
}

/** Puts `first` before the first line of a text, and as many spaces before the others. */
export function hang(first: string, text: string): string {
  const space = ' '.repeat(first.length);
  return text
    .split('\n')
    .map((line, at) => (line === '' ? '' : (at === 0 ? first : space) + line))
    .join('\n');
}
