/** With a capital letter, to begin a line. */
export function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** With a small first letter, for the middle of a sentence. */
export function lowerFirst(words: string): string {
  return `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}
