import { closest, distance } from 'fastest-levenshtein';

/**
 * The candidate that `word` most likely meant, whatever its letter case; undefined where none is near enough (about
 * one slip in three letters).
 */
export function nearestName(word: string, candidates: Iterable<string>): string | undefined {
  const names = [...candidates];
  if (names.length === 0) return undefined;
  const wanted = word.toLowerCase();
  const found = closest(
    wanted,
    names.map((name) => name.toLowerCase()),
  );
  const name = names.find((candidate) => candidate.toLowerCase() === found)!;
  const allowed = Math.max(1, Math.floor(Math.max(wanted.length, found.length) / 3));
  return distance(wanted, found) <= allowed ? name : undefined;
}

/** "; did you mean `stall`?", or nothing. For the middle of a message. */
export function didYouMean(word: string, candidates: Iterable<string>): string {
  const name = nearestName(word, candidates);
  return name === undefined ? '' : `; did you mean \`${name}\`?`;
}
