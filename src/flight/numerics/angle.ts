/** The angle from one direction to another, -pi to pi. rad. */
export function angleBetween(from: number, to: number): number {
  const turn = 2 * Math.PI;
  const angle = (((to - from) % turn) + turn) % turn;
  return angle > Math.PI ? angle - turn : angle;
}
