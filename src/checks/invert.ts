/** Where a function that only rises or only falls between `low` and `high` has the given value: a hundred halvings. */
export function invert(f: (x: number) => number, value: number, low: number, high: number): number {
  const rising = f(high) > f(low);
  let [from, to] = [low, high];
  for (let i = 0; i < 100; i++) {
    const middle = (from + to) / 2;
    if (f(middle) > value === rising) to = middle;
    else from = middle;
  }
  return (from + to) / 2;
}
