/** One part of a list that is shared out between builds: `index` of `count`, counted from 1. */
export interface Shard {
  readonly index: number;
  readonly count: number;
}

/** Reads `2/4`; undefined where the text is not one. */
export function parseShard(text: string): Shard | undefined {
  const found = /^(\d{1,4})\/(\d{1,4})$/.exec(text.trim());
  if (!found) return undefined;
  const [index, count] = [Number(found[1]), Number(found[2])];
  return index >= 1 && index <= count ? { index, count } : undefined;
}

/**
 * The part of a list that belongs to a shard: neighbours stay together, because they often share a flight. The shards
 * of one count hold every item once.
 */
export function inShard<Item>(items: readonly Item[], { index, count }: Shard): Item[] {
  const start = (place: number) => Math.floor((place * items.length) / count);
  return items.slice(start(index - 1), start(index));
}
