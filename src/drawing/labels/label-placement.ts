import { boxesOverlap, contains, segmentMeetsBox } from '../kit/geometry.ts';
import type { LabelRequest, PlacedLabel, Surroundings } from './label.ts';
import {
  crowding,
  hidesFixed,
  hidesLabel,
  labelsCrossed,
  leaderCost,
  leadersMet,
  nearbyOnly,
} from './label-costs.ts';
import { farCandidates, nearCandidates, type Option, placeAt, sorted } from './label-options.ts';

/**
 * Finds a place for every label: greedy, then each one again with the others fixed; in the order given, and where
 * that leaves a label hiding something or far off, in other orders too. Deterministic.
 * A label never covers a line, a box, another label or a leader as long as there is a free place within its reach.
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  surroundings: Surroundings,
): readonly PlacedLabel[] {
  const searches = requests.map((request) => new Search(request, surroundings));
  let best = placeInOrder(searches);
  const orders = [
    () => [...searches].reverse(),
    () => worstFirst(searches, best),
    () => worstFirst(searches, best),
  ];
  for (const order of orders) {
    if (best.worst < contentWith) break;
    const other = placeInOrder(order());
    if (other.total < best.total) best = other;
  }
  return searches.map((search) => best.found.get(search)!.place);
}

/** A place and what it costs: distance, lines that its leader crosses, what it hides. */
interface Found {
  readonly place: PlacedLabel;
  readonly cost: number;
}

interface Arrangement {
  readonly found: ReadonlyMap<Search, Found>;
  readonly total: number;
  readonly worst: number;
}

/** An arrangement in which no place costs as much as this is not improved further. */
const contentWith = 14;
const rounds = 3;

function placeInOrder(searches: readonly Search[]): Arrangement {
  const found = new Map<Search, Found>();
  for (let round = 0; round < rounds; round += 1) {
    for (const search of searches) {
      found.delete(search);
      found.set(search, search.best([...found.values()].map(({ place }) => place)));
    }
  }
  const costs = [...found.values()].map(({ cost }) => cost);
  return { found, total: costs.reduce((sum, cost) => sum + cost, 0), worst: Math.max(...costs, 0) };
}

function worstFirst(searches: readonly Search[], { found }: Arrangement): Search[] {
  return [...searches].sort((a, b) => found.get(b)!.cost - found.get(a)!.cost);
}

/** The search for one label's place. */
class Search {
  readonly #request: LabelRequest;
  readonly #surroundings: Surroundings;
  readonly #near: Option[];
  #far: Option[] | undefined;

  constructor(request: LabelRequest, surroundings: Surroundings) {
    this.#request = request;
    this.#surroundings = nearbyOnly(request, surroundings);
    this.#near = sorted(nearCandidates(request));
  }

  /** The best place beside the labels that already have theirs. */
  best(others: readonly PlacedLabel[]): Found {
    return (
      this.#bestOf(this.#near, others) ??
      this.#bestOf(this.#farOptions(), others) ??
      this.#leastHiding(others)
    );
  }

  #farOptions(): Option[] {
    this.#far ??= sorted(farCandidates(this.#request, this.#surroundings.frame));
    return this.#far;
  }

  #bestOf(options: readonly Option[], others: readonly PlacedLabel[]): Found | undefined {
    let best: Found | undefined;
    for (const option of options) {
      if (best && option.least >= best.cost) break;
      option.cost ??= this.#costBesideFixed(option);
      if (option.cost >= (best?.cost ?? Number.POSITIVE_INFINITY)) continue;
      const { box, leader } = option.place;
      if (hidesLabel(box, others)) continue;
      const crossed = labelsCrossed(leader, others);
      const cost = option.cost + leadersMet(leader, others) + crowding(box, others) + crossed * 200;
      if (best === undefined || cost < best.cost)
        best = { place: { ...option.place, clear: crossed === 0 }, cost };
    }
    return best;
  }

  #costBesideFixed({ place, least }: Option): number {
    if (hidesFixed(place.box, this.#surroundings)) return Number.POSITIVE_INFINITY;
    return least + leaderCost(place.leader, this.#surroundings);
  }

  #leastHiding(others: readonly PlacedLabel[]): Found {
    const { frame, boxes, lines } = this.#surroundings;
    let best: Found | undefined;
    for (const { place } of [...this.#near, ...this.#farOptions()]) {
      const { box } = place;
      if (!contains(frame, box)) continue;
      const hidden =
        10 * others.filter((other) => boxesOverlap(box, other.box)).length +
        4 * boxes.filter((other) => boxesOverlap(box, other)).length +
        lines.filter((line) => segmentMeetsBox(line, box)).length;
      const cost = 1000 * (1 + hidden);
      if (best === undefined || cost < best.cost) best = { place: { ...place, clear: false }, cost };
    }
    const { anchor, width, height } = this.#request;
    const box = { ...anchor, width, height };
    return best ?? { place: { ...placeAt(this.#request, anchor, box), clear: false }, cost: 1e6 };
  }
}
