import type { WindAtHeight } from '../flight/plan.ts';

/** The wind at a height (m), between the listed ones: vectors, linear in height; the nearest one beyond them. */
export function windAloft(wind: readonly WindAtHeight[], height: number): WindAtHeight | undefined {
  const above = wind.findIndex((listed) => listed.height >= height);
  if (above === -1) return wind.at(-1);
  const high = wind[above]!;
  const low = wind[above - 1];
  if (low === undefined || high.height === height) return high;
  const share = (height - low.height) / (high.height - low.height);
  const mix = (part: (angle: number) => number) =>
    low.speed * part(low.from) * (1 - share) + high.speed * part(high.from) * share;
  const [east, north] = [mix(Math.sin), mix(Math.cos)];
  return { height, from: Math.atan2(east, north), speed: Math.hypot(east, north) };
}
