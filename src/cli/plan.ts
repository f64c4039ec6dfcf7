import { Command } from 'commander';
import { planToJson } from '../export/plan-json.ts';
import { flyableWords } from '../words/cautions/flyable-words.ts';
import { aviation } from '../words/figures/aviation.ts';
import { type AskedOptions, exitCodes, planned, withApproachOptions } from './asked-plan.ts';
import { planTable } from './plan-table.ts';

interface PlanOptions extends AskedOptions {
  json?: true;
}

/** `chalkwing plan`: flies one approach, and gives a table to read, or the plan contract as JSON. */
export function planCommand(): Command {
  const command = new Command('plan').description(
    'Fly one approach and print its key positions, or all of it as JSON',
  );
  return withApproachOptions(command)
    .option('--json', 'print the plan contract')
    .action(async (options: PlanOptions) => {
      const asked = await planned(options);
      if (!asked) {
        process.exitCode = exitCodes.unreadable;
        return;
      }
      const { plan, request } = asked;
      process.stdout.write(
        options.json
          ? `${JSON.stringify(planToJson(plan))}\n`
          : planTable(plan, flyableWords(plan, request, aviation)),
      );
      process.exitCode = plan.grade === 'not-to-be-flown' ? exitCodes.notToBeFlown : exitCodes.made;
    });
}
