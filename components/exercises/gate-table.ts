import type { Gate, Plan } from '../../src/flight/terms/plan.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { asNear, edgeTexts, gateBand } from '../../src/words/gates/gate-band.ts';
import { formatKeyHeight } from '../../src/words/keys/key-height.ts';
import { keyNames } from '../../src/words/keys/key-names.ts';
import type { ExerciseTable } from './exercise.ts';

/** A gate with both of its edges. m. */
export interface Band extends Gate {
  readonly low: number;
  readonly high: number;
}

/** The band at a key; undefined where there is none, where one side is missing, or where the plan itself is not in it. */
export function bandAt(gates: readonly Gate[], at: Gate['at'], units: PageUnits): Band | undefined {
  const gate = gates.find((each) => each.at === at);
  if (!gate || gate.low === null || gate.high === null) return undefined;
  if (gateBand(gate, units).none !== undefined) return undefined;
  if (gate.plan < gate.low - asNear || gate.plan > gate.high + asNear) return undefined;
  return { ...gate, low: gate.low, high: gate.high };
}

/** The gates as the packet prints them. */
export function gateTable(
  { gates, cautions }: Pick<Plan, 'gates' | 'cautions'>,
  units: PageUnits,
): ExerciseTable {
  return {
    head: ['At', 'Not below', 'Plan', 'Not above'],
    rows: gates.map((gate) => {
      const { low, high } = edgeTexts(gate, units);
      const planned = formatKeyHeight({ id: gate.at, height: gate.plan }, cautions, units);
      return [keyNames[gate.at], low, planned, high];
    }),
  };
}
