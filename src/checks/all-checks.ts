import type { PlanRequest } from '../flight/terms/plan.ts';
import { type FlownCheck, flownChecks } from './flown.ts';
import { limitChecks } from './limits.ts';
import { type CheckResult, runChecks } from './run-checks.ts';
import { type TradeResult, tradeChecks } from './trade.ts';

/** Every check of the computation core, with the aircraft flown in those that need one. */
export interface AllChecks {
  readonly published: readonly CheckResult[];
  readonly flown: readonly FlownCheck[];
  readonly trade: readonly TradeResult[];
}

/** Runs every check. `flyers` must hold at least one aircraft. Throws RequestError for one that cannot be flown at all. */
export function allChecks(flyers: readonly PlanRequest[]): AllChecks {
  return {
    published: [...runChecks(), ...limitChecks(flyers[0]!)],
    flown: flyers.flatMap(flownChecks),
    trade: tradeChecks(flyers),
  };
}

/** Rows counted once each, however many lines of the page they take. */
export interface Summary {
  readonly rows: number;
  readonly found: number;
  readonly memory: number;
  readonly agree: number;
  readonly printedWrong: number;
  readonly disagree: number;
  readonly trade: number;
  /** Figures of the trade that at least one of the aircraft does not fit. */
  readonly tradeUnfit: number;
  readonly flown: number;
  readonly flownDisagree: number;
}

export function summaryOf({ published, flown, trade }: AllChecks): Summary {
  const rows = new Map([...published, ...trade].map(({ row }) => [row.id, row]));
  const ids = (results: readonly { row: { id: string } }[]) => new Set(results.map(({ row }) => row.id)).size;
  const judged = (verdict: CheckResult['verdict']) =>
    published.filter((result) => result.verdict === verdict);
  const disagree = ids(judged('disagrees'));
  const printedWrong = ids(judged('printed-wrong'));
  return {
    rows: rows.size,
    found: [...rows.values()].filter(({ status }) => status === 'FOUND').length,
    memory: [...rows.values()].filter(({ status }) => status === 'MEMORY').length,
    agree: ids(published) - disagree - printedWrong,
    printedWrong,
    disagree,
    trade: ids(trade),
    tradeUnfit: ids(trade.filter(({ fits }) => !fits)),
    flown: flown.length,
    flownDisagree: flown.filter(({ verdict }) => verdict === 'disagrees').length,
  };
}

/** True where nothing disagrees. A misprint, or a figure that does not fit an aircraft, is not a disagreement. */
export function allAgree({ disagree, flownDisagree }: Summary): boolean {
  return disagree === 0 && flownDisagree === 0;
}

/** The summary in one line. */
export function summaryLine(summary: Summary): string {
  const { rows, found, memory, agree, printedWrong, disagree, trade, tradeUnfit } = summary;
  const { flown, flownDisagree } = summary;
  const parts = [
    `${agree} agree`,
    `${printedWrong} printed wrong and named`,
    `${disagree} disagree`,
    `${trade} trade figures, ${tradeUnfit} of which do not fit every aircraft`,
  ];
  return (
    `${rows} published rows (${found} read in the document, ${memory} from memory): ${parts.join(', ')}; ` +
    `${flown - flownDisagree} of ${flown} flown checks agree`
  );
}
