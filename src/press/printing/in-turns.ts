/**
 * Works on items in order, at most `atOnce` at the same time. After an error, or once `signal` is aborted, no other
 * item is begun; those begun are waited for, and the first error is thrown.
 */
export async function inTurns<Item>(
  items: readonly Item[],
  atOnce: number,
  work: (item: Item, index: number) => Promise<void>,
  signal?: AbortSignal,
): Promise<void> {
  let next = 0;
  const errors: unknown[] = [];
  const worker = async () => {
    while (next < items.length && errors.length === 0 && !signal?.aborted) {
      const index = next++;
      try {
        await work(items[index]!, index);
      } catch (error) {
        errors.push(error);
      }
    }
  };
  await Promise.all(Array.from({ length: Math.min(atOnce, items.length) }, worker));
  if (errors.length > 0) throw errors[0];
}
