import { Command, CommanderError } from 'commander';
import { buildCommand } from './build.ts';
import { cardCommand } from './card.ts';
import { checkCommand } from './check.ts';
import { checksCommand } from './checks.ts';
import { exportCommand } from './export.ts';
import { handbookCommand } from './handbook.ts';
import { newCommand } from './new.ts';
import { planCommand } from './plan.ts';
import { referenceCommand } from './reference.ts';
import { version } from './version.ts';

/** Exit code for arguments that cannot be read. */
const badArguments = 2;

const program = new Command('chalkwing')
  .description('Lessons in approaches and landings, computed for one aircraft, one airfield and one wind')
  .version(version, '--version', 'show the version of this program')
  .exitOverride()
  .addCommand(newCommand())
  .addCommand(planCommand())
  .addCommand(exportCommand())
  .addCommand(buildCommand())
  .addCommand(handbookCommand())
  .addCommand(cardCommand())
  .addCommand(checkCommand())
  .addCommand(checksCommand())
  .addCommand(referenceCommand());
// A command that is added does not take this over from the program.
for (const command of program.commands) command.exitOverride();

try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof CommanderError)) throw error;
  process.exitCode = error.exitCode === 0 ? 0 : badArguments;
}
