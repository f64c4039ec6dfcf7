import { describe, expect, it } from 'vitest';
import { inTurns } from './in-turns.ts';

const pause = () => new Promise((resolve) => setTimeout(resolve, 2));

describe('work in turns', () => {
  it.each([1, 2, 3, 9])('begins every item once, in order, at most %i at once', async (atOnce) => {
    const items = ['a', 'b', 'c', 'd', 'e', 'f'];
    const begun: string[] = [];
    let running = 0;
    let most = 0;
    await inTurns(items, atOnce, async (item, index) => {
      expect(items[index]).toBe(item);
      begun.push(item);
      running += 1;
      most = Math.max(most, running);
      await pause();
      running -= 1;
    });
    expect(begun).toEqual(items);
    expect(most).toBe(Math.min(atOnce, items.length));
  });

  it('begins no other after an error, waits for those that run, and throws the error', async () => {
    const done: number[] = [];
    const run = inTurns([0, 1, 2, 3, 4], 2, async (item) => {
      if (item === 0) throw new Error('the first');
      await pause();
      done.push(item);
    });
    await expect(run).rejects.toThrow('the first');
    expect(done).toEqual([1]);
  });

  it('begins no other once it is told to stop', async () => {
    const stop = new AbortController();
    const begun: number[] = [];
    await inTurns(
      [0, 1, 2, 3],
      1,
      async (item) => {
        begun.push(item);
        if (item === 1) stop.abort();
      },
      stop.signal,
    );
    expect(begun).toEqual([0, 1]);
  });
});
