import { Command, Option } from 'commander';
import { toGeoJson } from '../export/geojson.ts';
import { toGpx } from '../export/gpx.ts';
import { toKml } from '../export/kml.ts';
import { UnplaceableError } from '../export/on-earth.ts';
import { placeFlight, startOfReach } from '../export/placed-flight.ts';
import { type GroundPoint, reachFrom } from '../flight/flying/reach.ts';
import { angleBetween } from '../flight/numerics/angle.ts';
import { workOut } from '../flight/plan/planner.ts';
import { writeWhole } from '../press/printing/write-whole.ts';
import { flyableWords } from '../words/cautions/flyable-words.ts';
import { gradeSentence } from '../words/cautions/grade-sentences.ts';
import { aviation } from '../words/figures/aviation.ts';
import { type AskedOptions, type AskedPlan, exitCodes, planned, withApproachOptions } from './asked-plan.ts';

const formats = { geojson: toGeoJson, kml: toKml, gpx: toGpx };

interface ExportOptions extends AskedOptions {
  format: keyof typeof formats;
  out?: string;
}

/** `chalkwing export`: the key positions, the track and the reach of one approach, for map programs. */
export function exportCommand(): Command {
  const command = new Command('export').description(
    'Fly one approach and write its key positions, track and reach as GeoJSON, KML or GPX',
  );
  return withApproachOptions(command)
    .addOption(
      new Option('--format <kind>', 'kind of file').choices(Object.keys(formats)).makeOptionMandatory(),
    )
    .option('--out <file>', 'file to write; default: standard output')
    .action(async (options: ExportOptions) => {
      const asked = await planned(options);
      process.exitCode = asked ? await exported(asked, options) : exitCodes.unreadable;
    });
}

async function exported(asked: AskedPlan, options: ExportOptions): Promise<number> {
  const { plan, request, airfield } = asked;
  if (plan.grade === 'not-to-be-flown') {
    process.stderr.write(
      `${gradeSentence(plan, plan.grade, aviation, flyableWords(plan, request, aviation))} Nothing is written.\n`,
    );
    return exitCodes.notToBeFlown;
  }
  try {
    const text = formats[options.format](placeFlight(plan, airfield, reachOf(asked)));
    if (options.out === undefined) process.stdout.write(text);
    else await writeWhole(options.out, text);
    return exitCodes.made;
  } catch (error) {
    if (!(error instanceof UnplaceableError)) throw error;
    process.stderr.write(`${options.airfield}: ${error.message}\n`);
    return exitCodes.unreadable;
  }
}

/** From the key that `startOfReach` names, with the bank of the plan: as `::reach` draws it. */
function reachOf({ plan, request }: AskedPlan): GroundPoint[] {
  const key = startOfReach(plan);
  const sample = plan.track.reduce((best, each) =>
    Math.abs(each.time - key.time) < Math.abs(best.time - key.time) ? each : best,
  );
  const { conditions } = workOut({ ...request, detail: 'flight' }).resolved;
  const heading = angleBetween(plan.runway.heading, sample.heading);
  return reachFrom({ ...key, heading }, plan.flown.bank, conditions);
}
