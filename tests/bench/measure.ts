/**
 * The median of how long each of these takes, ms: they are run in turns, so that whatever else the machine does
 * affects all alike.
 */
export function inTurns(works: readonly (() => unknown)[], rounds: number, warmUp: number): number[] {
  for (let i = 0; i < warmUp; i++) for (const work of works) work();
  const taken: number[][] = works.map(() => []);
  for (let i = 0; i < rounds; i++) {
    works.forEach((work, k) => {
      const start = performance.now();
      work();
      taken[k]!.push(performance.now() - start);
    });
  }
  return taken.map(median);
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}

/** Bytes of heap that a piece of work has used before anything is collected; the median of several. */
export function bytesAllocated(work: () => unknown, rounds: number): number {
  const { gc } = globalThis as { gc?: () => void };
  if (!gc) throw new Error('run with --expose-gc');
  const grown: number[] = [];
  for (let i = 0; i < rounds; i++) {
    gc();
    const before = process.memoryUsage().heapUsed;
    work();
    grown.push(process.memoryUsage().heapUsed - before);
  }
  // A collection in between makes the difference too small, never too large.
  return Math.max(...grown);
}
