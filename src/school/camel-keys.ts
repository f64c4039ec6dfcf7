type Camel<Key> = Key extends `${infer Head}-${infer Tail}` ? `${Head}${Capitalize<Camel<Tail>>}` : Key;

/** The same data with `kebab-case` keys in `camelCase`, at every depth. */
export type CamelKeys<T> = T extends readonly (infer Item)[]
  ? CamelKeys<Item>[]
  : T extends object
    ? { [Key in keyof T as Camel<Key & string>]: CamelKeys<T[Key]> }
    : T;

/** Plain data only: objects, lists, text, numbers. */
export function camelKeys<T>(value: T): CamelKeys<T> {
  if (Array.isArray(value)) return value.map((item) => camelKeys(item)) as CamelKeys<T>;
  if (typeof value !== 'object' || value === null) return value as CamelKeys<T>;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [camel(key), camelKeys(item)]),
  ) as CamelKeys<T>;
}

function camel(key: string): string {
  return key.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}
