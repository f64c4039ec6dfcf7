const goldenShare = (Math.sqrt(5) - 1) / 2;

/**
 * Where a function of one number is least between `low` and `high`, to `tolerance` in that number, by golden section
 * (Kiefer, Proceedings of the American Mathematical Society 4, 1953). Correct for a function that falls, may then
 * stay level, and rises.
 */
export function leastBetween(
  f: (x: number) => number,
  [from, to]: readonly [low: number, high: number],
  tolerance: number,
): number {
  let [low, high] = [from, to];
  let [a, b] = [high - goldenShare * (high - low), low + goldenShare * (high - low)];
  let [atA, atB] = [f(a), f(b)];
  while (high - low > tolerance) {
    if (atA < atB) {
      high = b;
      [b, atB] = [a, atA];
      a = high - goldenShare * (high - low);
      atA = f(a);
    } else {
      low = a;
      [a, atA] = [b, atB];
      b = low + goldenShare * (high - low);
      atB = f(b);
    }
  }
  return (low + high) / 2;
}
