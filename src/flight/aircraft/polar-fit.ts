import type { SinkPoint } from '../terms/aircraft-data.ts';
import { RequestError } from '../terms/errors.ts';
import type { Polar } from './glide.ts';

/** A fitted polar and how well it meets its points. */
export interface FittedPolar extends Polar {
  /** m/s: root of the mean square of measured less fitted sink. */
  readonly residual: number;
}

/**
 * Fits the polar to three or more measured points by least squares in the sink. With s = sink/V the exact steady
 * glide is s = a V^2 + b (1 - s^2)/V^2, linear in a and b, with E = 1/(2 sqrt(ab)) and Vbest^4 = b cos^2(g0)/a.
 * Throws RequestError, naming `field`, for fewer than three different speeds, a sink that is not a glide, or points
 * that no polar fits.
 */
export function fitPolar(points: readonly SinkPoint[], field = 'points'): FittedPolar {
  if (new Set(points.map(({ speed }) => speed)).size < 3) {
    throw new RequestError(field, { code: 'too-few-points' });
  }
  let [xx, xy, yy, xw, yw] = [0, 0, 0, 0, 0];
  for (const { speed, sink } of points) {
    if (!(speed > 0 && sink > 0 && sink < speed)) {
      throw new RequestError(field, { code: 'sink-is-no-glide' });
    }
    const { x, y } = parts(speed, sink);
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xw += x * sink;
    yw += y * sink;
  }
  const determinant = xx * yy - xy * xy;
  const a = (xw * yy - yw * xy) / determinant;
  const b = (yw * xx - xw * xy) / determinant;
  if (!(a > 0 && b > 0 && Number.isFinite(a) && Number.isFinite(b))) {
    throw new RequestError(field, { code: 'no-polar-fits' });
  }
  const ratio = 1 / (2 * Math.sqrt(a * b));
  const cosSquared = (ratio * ratio) / (1 + ratio * ratio);
  const squares = points.map(({ speed, sink }) => {
    const { x, y } = parts(speed, sink);
    return (sink - a * x - b * y) ** 2;
  });
  return {
    speed: Math.sqrt(Math.sqrt((b * cosSquared) / a)),
    ratio,
    residual: Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / points.length),
  };
}

/** The factors of a and b in the sink: V s = a V^3 + b (1 - s^2)/V. */
function parts(speed: number, sink: number): { x: number; y: number } {
  return { x: speed * speed * speed, y: (1 - (sink / speed) ** 2) / speed };
}
