import { loadavg } from 'node:os';
import { againstOdex } from './against-odex.ts';
import { faultsAgainstPrint } from './faults-against-print.ts';
import { manyPlans } from './many-plans.ts';
import { printing } from './printing.ts';
import { scatter } from './scatter.ts';
import { tableOf } from './table.ts';

/*
 * `npm run bench`: how long the core takes. Medians of repeated runs after a warm-up, on one core; things that are
 * compared are run in turns in the same process. It prints and never fails: the speed of a machine is not a test.
 */

const started = performance.now();
const lines = [
  ...againstOdex(),
  ...manyPlans(),
  ...scatter(),
  ...(await faultsAgainstPrint()),
  ...(await printing()),
];
process.stdout.write(`${tableOf(lines)}\n
The cost is that of the evaluations of the rates of change: four a Runge-Kutta step, each with a wind (an exponential and
a logarithm) and a glide angle (a square root); what is left is the search for the event that ends a leg.
Node ${process.versions.node}, load of the machine ${loadavg()[0]!.toFixed(1)}, ${((performance.now() - started) / 1000).toFixed(0)} s.\n`);
