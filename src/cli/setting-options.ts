import { type Command, Option } from 'commander';
import type { Power } from '../flight/terms/aircraft.ts';
import type { Circuit } from '../flight/terms/airfield.ts';
import { quantityOption } from './options.ts';
import { metarHelp } from './weather.ts';

/**
 * What a command that prints takes in place of the lesson's and the school's settings; each command has its own
 * `--wind`.
 */
export interface PrintedSetting {
  readonly school: string;
  readonly airfield?: string;
  readonly runway?: string;
  readonly circuit?: Circuit;
  readonly metar?: string;
  /** m/s. */
  readonly gust?: number;
  /** K. */
  readonly temperature?: number;
  /** Pa. */
  readonly qnh?: number;
  readonly power?: Power;
}

/** `usual` says whose setting holds where nothing is asked for: "the school's". */
export function withSettingOptions(command: Command, usual: string): Command {
  return command
    .option('--school <folder>', 'folder that holds school.yaml', 'lessons')
    .option('--airfield <id>', `default: ${usual}`)
    .option('--runway <name>', `default: ${usual}`)
    .addOption(new Option('--circuit <side>', "default: the runway's").choices(['left', 'right']))
    .option('--metar <report>', metarHelp)
    .option('--gust <speed>', "highest gust, such as 18kt; default: the school's", quantityOption('speed'))
    .option(
      '--temperature <temperature>',
      `at the field, such as 25C; default: ${usual}`,
      quantityOption('temperature'),
    )
    .option('--qnh <pressure>', `such as 1008hPa; default: ${usual}`, quantityOption('pressure'))
    .addOption(new Option('--power <setting>', 'engine').choices(['idle', 'stopped']));
}
