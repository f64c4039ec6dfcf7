import type { Phase, Plan } from '../../flight/terms/plan.ts';
import type { DrawingBoard } from '../kit/drawing.ts';
import { size } from '../kit/ink.ts';

const phaseNames: Readonly<Record<Phase, string>> = {
  overhead: 'overhead',
  circle: 'circle',
  downwind: 'downwind',
  'base-turn': 'base turn',
  base: 'base',
  'final-turn': 'final turn',
  final: 'final',
  'round-out': 'round-out, hold-off',
  'hold-off': 'round-out, hold-off',
};

/** A phase of the flight: between which places across the page it lies, and where its name is. mm. */
export interface PhaseName {
  /** Empty where there is no room for the name. */
  readonly text: string;
  readonly from: number;
  readonly to: number;
  /** Middle of the name and its row, from 0. */
  readonly at: number;
  readonly row: number;
  /** Where a line leads down to the name; only from the second row down. */
  readonly leader?: number | undefined;
}

/**
 * The phases in the order flown; `xs` are the samples' places across the page, rising. A name that does not fit
 * beside the others takes a lower row.
 */
export function phaseRows(
  plan: Plan,
  board: DrawingBoard,
  xs: readonly number[],
  width: number,
): readonly PhaseName[] {
  const spans: { text: string; from: number; to: number }[] = [];
  for (const [index, sample] of plan.track.entries()) {
    const x = xs[index]!;
    const text = phaseNames[sample.phase];
    const last = spans.at(-1);
    if (last) last.to = x;
    if (last?.text !== text) spans.push({ text, from: x, to: x });
  }
  const placed: PhaseName[] = [];
  for (const span of spans) placed.push(new Namer(board, width, spans, placed).place(span));
  return placed;
}

interface Span {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** mm kept free beside a name, and beside a leader. */
const apart = { name: 1.6, leader: 0.8 };
/** Where along a phase's bar a leader may start. */
const shares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95];

/** Finds the place of one name beside those already placed. */
class Namer {
  readonly #board: DrawingBoard;
  readonly #width: number;
  readonly #spans: readonly Span[];
  readonly #placed: readonly PhaseName[];

  constructor(board: DrawingBoard, width: number, spans: readonly Span[], placed: readonly PhaseName[]) {
    this.#board = board;
    this.#width = width;
    this.#spans = spans;
    this.#placed = placed;
  }

  place(span: Span): PhaseName {
    return this.#besideBar(span) ?? this.#below(span) ?? { ...span, text: '', at: middle(span), row: 0 };
  }

  /** In the first row: under the middle of its bar, or to one side, as long as that leaves the next bars uncovered. */
  #besideBar(span: Span): PhaseName | undefined {
    const half = this.#half(span.text);
    const free = [middle(span), span.to - half, span.from + half]
      .map((at) => this.#onPaper(at, half))
      .filter((at) => this.#isFree(span.text, at, 0));
    const kind = free.find((at) =>
      this.#spans.every((other) => other === span || Math.abs(middle(other) - at) > half + apart.leader),
    );
    const at = kind ?? free[0];
    return at === undefined ? undefined : { ...span, at, row: 0 };
  }

  /** In a lower row, with a leader that passes the names above. Undefined where there is no way through. */
  #below(span: Span): PhaseName | undefined {
    const half = this.#half(span.text);
    const at = this.#onPaper(middle(span), half);
    for (let row = 1; row <= this.#placed.length; row += 1) {
      if (!this.#isFree(span.text, at, row)) continue;
      const above = this.#placed.filter((other) => other.row < row && other.text !== '');
      const leader = shares
        .map((share) => span.from + (span.to - span.from) * share)
        .filter((x) => Math.abs(x - at) < half)
        .find((x) => above.every((other) => Math.abs(other.at - x) > this.#half(other.text) + apart.leader));
      if (leader !== undefined) return { ...span, at, row, leader };
    }
    return undefined;
  }

  #isFree(text: string, at: number, row: number): boolean {
    const half = this.#half(text);
    return this.#placed.every((other) => {
      if (other.text === '') return true;
      const beside = Math.abs(other.at - at) > this.#half(other.text) + half + apart.name;
      if (other.row === row) return beside;
      const { leader } = other;
      return leader === undefined || other.row < row || Math.abs(leader - at) > half + apart.leader;
    });
  }

  #half(text: string): number {
    return this.#board.measure(text, size.small) / 2;
  }

  #onPaper(at: number, half: number): number {
    return Math.min(Math.max(at, half + 1), this.#width - half - 1);
  }
}

function middle({ from, to }: Span): number {
  return (from + to) / 2;
}
