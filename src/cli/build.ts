import { Command } from 'commander';
export function buildCommand(): Command {
  return new Command('build');
}
