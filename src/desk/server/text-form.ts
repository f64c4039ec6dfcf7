const mark = '\uFEFF';

/** Text as the page edits it: lines end with `\n`, without a byte order mark. */
export function plainText(text: string): string {
  return text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
}

/**
 * Edited text in the form of the file: with its byte order mark and its line ends. A line that was not changed keeps
 * its own end, even in a file that mixes them; a new line ends as most lines do.
 */
export function inFormOf(before: string, edited: string): string {
  const old = linesOf(before.replace(/^\uFEFF/, ''));
  const lines = plainText(edited).split('\n');
  let same = 0;
  while (same < Math.min(old.length, lines.length) && old[same]!.text === lines[same]) same += 1;
  let sameLast = 0;
  while (
    sameLast < Math.min(old.length, lines.length) - same &&
    old.at(-1 - sameLast)!.text === lines.at(-1 - sameLast)
  )
    sameLast += 1;
  const usual = usualEnd(old);
  const endOf = (at: number): string => {
    if (at === lines.length - 1) return '';
    const fromLast = lines.length - at;
    const own = fromLast <= sameLast ? old.at(-fromLast) : at < old.length - sameLast ? old[at] : undefined;
    return own?.end || usual;
  };
  return (before.startsWith(mark) ? mark : '') + lines.map((line, at) => line + endOf(at)).join('');
}

interface Line {
  readonly text: string;
  /** '' for the last one. */
  readonly end: string;
}

function linesOf(text: string): Line[] {
  const parts = text.split(/(\r\n|\n|\r)/);
  return parts
    .filter((_, at) => at % 2 === 0)
    .map((line, at) => ({ text: line, end: parts[2 * at + 1] ?? '' }));
}

function usualEnd(lines: readonly Line[]): string {
  const count = (end: string) => lines.filter((line) => line.end === end).length;
  return ['\n', '\r\n', '\r'].reduce((best, end) => (count(end) > count(best) ? end : best));
}
