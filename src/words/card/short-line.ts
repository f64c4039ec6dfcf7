/** A catchword has no more words than this. */
const catchword = 3;

/**
 * A checklist line as a catchword: what comes before its colon (`Field: take the best one ...` is `Field`), up to a
 * comma; or its first sentence where there is no such catchword.
 */
export function shortLine(line: string): string {
  const text = line.trim();
  const before = /^([^:.;]+):/.exec(text)?.[1]?.split(',')[0]?.trim();
  if (before && before.split(/\s+/).length <= catchword) return before;
  const sentence = /^.*?[.;!?](?=\s|$)/.exec(text)?.[0] ?? text;
  return sentence.replace(/[.;]$/, '');
}
