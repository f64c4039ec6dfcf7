/** How many must be done before the time for the others can be told: the first one waits for the browser to start. */
const enough = 3;

/** Seconds until all `of` are done, from the time that `done` of them took; undefined until that can be told. */
export function secondsLeft(done: number, of: number, elapsedSeconds: number): number | undefined {
  return done < enough ? undefined : (elapsedSeconds / done) * (of - done);
}

/** `about 40 s left`, `about 3 min left`: no finer than it can be known. */
export function leftWords(seconds: number): string {
  if (seconds < 10) return 'a few seconds left';
  if (seconds < 90) return `about ${Math.ceil(seconds / 10) * 10} s left`;
  return `about ${Math.ceil(seconds / 60)} min left`;
}
