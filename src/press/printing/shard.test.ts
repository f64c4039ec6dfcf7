import { describe, expect, it } from 'vitest';
import { inShard, parseShard } from './shard.ts';

describe('a shard', () => {
  it('is read as the second of four', () => {
    expect(parseShard('2/4')).toEqual({ index: 2, count: 4 });
  });

  it.each(['0/4', '5/4', '2', '2/', '/4', '-1/4', '1.5/4', '2/0', 'a/b', ''])('is not %j', (text) => {
    expect(parseShard(text)).toBeUndefined();
  });

  it('holds with the others of its count every item once, in order, and no more than one item more than another', () => {
    for (const length of [0, 1, 3, 7, 36, 100])
      for (const count of [1, 2, 3, 4, 7, 50]) {
        const items = Array.from({ length }, (_, index) => index);
        const shards = Array.from({ length: count }, (_, index) =>
          inShard(items, { index: index + 1, count }),
        );
        expect(shards.flat()).toEqual(items);
        const sizes = shards.map((shard) => shard.length);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
      }
  });
});
