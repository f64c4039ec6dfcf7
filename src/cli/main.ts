import { Command, CommanderError } from 'commander';
import { version } from './version.ts';

/** Exit code for arguments that cannot be read. */
const badArguments = 2;

/** In the order of the help. A command is loaded only when asked for: some take a second to load. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  new: async () => (await import('./new.ts')).newCommand(),
  plan: async () => (await import('./plan.ts')).planCommand(),
  export: async () => (await import('./export.ts')).exportCommand(),
  build: async () => (await import('./build.ts')).buildCommand(),
  handbook: async () => (await import('./handbook.ts')).handbookCommand(),
  card: async () => (await import('./card.ts')).cardCommand(),
  desk: async () => (await import('./desk.ts')).deskCommand(),
  check: async () => (await import('./check.ts')).checkCommand(),
  checks: async () => (await import('./checks.ts')).checksCommand(),
  reference: async () => (await import('./reference.ts')).referenceCommand(),
};

const program = new Command('chalkwing')
  .description('Lessons in approaches and landings, computed for one aircraft, one airfield and one wind')
  .version(version, '--version', 'show the version of this program')
  .exitOverride();
const [asked] = process.argv.slice(2);
const load = asked !== undefined && Object.hasOwn(commands, asked) ? commands[asked] : undefined;
if (load) program.addCommand(await load());
else if (asked !== '--version') for (const each of Object.values(commands)) program.addCommand(await each());
// A command that is added does not inherit this from the program.
for (const command of program.commands) command.exitOverride();

try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof CommanderError)) throw error;
  process.exitCode = error.exitCode === 0 ? 0 : badArguments;
}
