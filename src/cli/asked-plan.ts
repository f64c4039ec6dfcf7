import { type Command, Option } from 'commander';
import { reporter } from 'vfile-reporter';
import { planApproach } from '../flight/plan/planner.ts';
import type { Power } from '../flight/terms/aircraft.ts';
import type { Circuit } from '../flight/terms/airfield.ts';
import type { Approach } from '../flight/terms/approach.ts';
import { approachIds } from '../flight/terms/approach.ts';
import { RequestError } from '../flight/terms/errors.ts';
import type { Plan, PlanRequest } from '../flight/terms/plan.ts';
import { didYouMean } from '../messages/nearest-name.ts';
import type { AirfieldFile } from '../school/airfield.ts';
import { readAircraft, readAirfield } from '../school/read.ts';
import type { Wind } from '../units/wind-text.ts';
import { aviation } from '../words/figures/aviation.ts';
import { requestSentence } from '../words/refusals/request-words.ts';
import { dayOption, quantityOption, today, wholeNumberOption, windOption } from './options.ts';
import { metarHelp, weatherOf } from './weather.ts';

/** The options of a command that flies one approach. */
export interface AskedOptions {
  aircraft: string;
  airfield: string;
  runway: string;
  approach: Approach;
  power: Power;
  circuit?: Circuit;
  metar?: string;
  wind?: Wind;
  gust?: number;
  profile: 'power' | 'uniform';
  temperature?: number;
  qnh?: number;
  mass?: number;
  height?: number;
  spacing?: number;
  bank?: number;
  baseDistance?: number;
  circles?: number;
  circlesDrift?: true;
  date?: Date;
}

/** A plan with the request it was flown from. */
export interface AskedPlan {
  readonly plan: Plan;
  readonly request: PlanRequest;
  readonly airfield: AirfieldFile;
}

/** Exit codes of the commands that fly one approach; one that does not reach the spot is not to be flown. */
export const exitCodes = { made: 0, unreadable: 2, notToBeFlown: 3 };

/** Adds the options that say which approach is flown, and in what air. */
export function withApproachOptions(command: Command): Command {
  return command
    .requiredOption('--aircraft <file>', 'aircraft file (YAML)')
    .requiredOption('--airfield <file>', 'airfield file (YAML)')
    .requiredOption('--runway <name>', 'runway of the airfield')
    .addOption(new Option('--approach <kind>', 'approach flown').choices(approachIds).makeOptionMandatory())
    .addOption(new Option('--power <setting>', 'engine').choices(['idle', 'stopped']).default('idle'))
    .addOption(new Option('--circuit <side>', "default: the runway's").choices(['left', 'right']))
    .option('--metar <report>', metarHelp)
    .option('--wind <wind>', 'surface wind, such as 210/12kt; default: calm', windOption)
    .option('--gust <speed>', 'highest gust, such as 18kt', quantityOption('speed'))
    .addOption(
      new Option('--profile <kind>', 'wind by height').choices(['power', 'uniform']).default('power'),
    )
    .option('--temperature <temperature>', 'at the field, such as 25C', quantityOption('temperature'))
    .option('--qnh <pressure>', 'such as 1008hPa', quantityOption('pressure'))
    .option('--mass <mass>', 'as flown, such as 360kg', quantityOption('mass'))
    .option('--height <height>', 'at the downwind key, such as 1000ft', quantityOption('length'))
    .option('--spacing <distance>', 'of the downwind leg, such as 500m', quantityOption('length'))
    .option('--bank <angle>', 'of the turns, such as 30deg', quantityOption('angle'))
    .option(
      '--base-distance <distance>',
      'of the base leg of a 90 from the spot, such as 400m',
      quantityOption('length'),
    )
    .option('--circles <number>', 'whole circles of a spiral', wholeNumberOption)
    .option('--circles-drift', 'let the circles of a spiral drift with the wind, not hold them on the ground')
    .option(
      '--date <day>',
      'the day of the magnetic variation, such as 2026-11-25; default: today',
      dayOption,
    );
}

/** The plan asked for; undefined, with messages on standard error, where the request cannot be read. */
export async function planned(options: AskedOptions): Promise<AskedPlan | undefined> {
  const weather = weatherOf(options);
  const aircraft = await readAircraft(options.aircraft);
  const airfield = await readAirfield(options.airfield, options.date ?? today());
  const files = [aircraft.file, airfield.file].filter((file) => file.messages.length > 0);
  if (files.length > 0) process.stderr.write(`${reporter(files)}\n`);
  if (!weather || !aircraft.value || !airfield.value) return undefined;
  const runway = airfield.value.runways.find(({ name }) => name === options.runway);
  if (!runway) {
    const names = airfield.value.runways.map(({ name }) => name);
    process.stderr.write(
      `${options.airfield}: there is no runway \`${options.runway}\`${didYouMean(options.runway, names)} (it has ${names.join(', ')})\n`,
    );
    return undefined;
  }
  const request: PlanRequest = {
    approach: options.approach,
    power: options.power,
    circuit: options.circuit,
    gust: options.gust,
    temperature: options.temperature,
    qnh: options.qnh,
    mass: options.mass,
    height: options.height,
    spacing: options.spacing,
    bank: options.bank,
    options: {
      '90': { baseDistance: options.baseDistance },
      spiral: { circles: options.circles, drift: options.circlesDrift },
    },
    ...weather,
    wind: weather.wind ?? { from: 0, speed: 0 },
    aircraft: aircraft.value,
    airfield: airfield.value,
    runway,
    windProfile: options.profile,
  };
  try {
    return { plan: planApproach(request), request, airfield: airfield.value };
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    process.stderr.write(`${place(error.field, options)}: ${requestSentence(error, aviation)}\n`);
    return undefined;
  }
}

/** Where a field of a request was written: a file, or an option. */
function place(field: string, options: AskedOptions): string {
  if (field.startsWith('aircraft.') || field.startsWith('speeds.') || field.startsWith('round-out.')) {
    return `${options.aircraft}: ${field.replace('aircraft.', '')}`;
  }
  if (field.startsWith('airfield.') || field.startsWith('runway.')) return `${options.airfield}: ${field}`;
  const option = field.split('.')[0]!;
  const reported = options.metar !== undefined && !Object.hasOwn(options, option);
  return reported && ['wind', 'gust', 'temperature', 'qnh'].includes(option) ? '--metar' : `--${option}`;
}
