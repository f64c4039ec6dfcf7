/**
 * Published reduction of induced drag by height over span: 47.6 % with the wing a tenth of its span above the
 * ground, 23.5 % at a quarter, 1.4 % at one span (FAA-H-8083-25, Aerodynamics of Flight, ground effect).
 */
const published = [
  { heightOverSpan: 0.1, reduction: 0.476 },
  { heightOverSpan: 0.25, reduction: 0.235 },
  { heightOverSpan: 1, reduction: 0.014 },
] as const;

/** On these axes the three published points lie almost on a straight line, so the curve between is well behaved. */
const abscissa = (heightOverSpan: number) => Math.log(heightOverSpan);
const ordinate = (reduction: number) => Math.log(-Math.log(reduction));

const nodes = published.map((p) => ({ x: abscissa(p.heightOverSpan), y: ordinate(p.reduction) }));
const [a, b, c] = nodes as [Node, Node, Node];
type Node = (typeof nodes)[number];
const slopeAB = (b.y - a.y) / (b.x - a.x);
const slopeBC = (c.y - b.y) / (c.x - b.x);
const curvature = (slopeBC - slopeAB) / (c.x - a.x);

/**
 * The share of the induced drag that ground effect removes, 0 to 1, with the wing `heightOverSpan` spans above the
 * ground. Goes through the published points exactly, and fades to nothing above them.
 */
export function inducedDragReduction(heightOverSpan: number): number {
  const x = abscissa(Math.max(heightOverSpan, 0.01));
  const y = a.y + (x - a.x) * (slopeAB + curvature * (x - b.x));
  return Math.exp(-Math.exp(y));
}
