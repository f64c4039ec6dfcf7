import { AltimeterUnit, type IMetar, parseMetar, SpeedUnit } from 'metar-taf-parser';
import {
  kelvinAtZeroCelsius,
  metresPerSecondPerKmh,
  metresPerSecondPerKnot,
  pascalsPerHectopascal,
  pascalsPerInchOfMercury,
  radiansPerDegree,
} from '../units/factors.ts';
import type { Wind } from '../units/wind-text.ts';
import { MetarError, type MetarGroups, metarGroups } from './metar-groups.ts';

/** What a METAR says about the air that an approach is flown in. */
export interface MetarWeather {
  /** ICAO location indicator. */
  readonly station: string;
  /** Mean wind at 10 m. A METAR gives it from true north (WMO-No. 306, FM 15, 15.5.1), so nothing is added. */
  readonly wind: Wind;
  /** m/s; always more than the wind. */
  readonly gust?: number | undefined;
  /** K; reported in whole degrees Celsius. */
  readonly temperature?: number | undefined;
  /**
   * Pa, as reported: QNH is rounded down to the whole hectopascal or hundredth of an inch (FM 15, 15.12), so the true
   * one is up to 1 hPa higher, which is 8 m or 0.1 % of density.
   */
  readonly qnh?: number | undefined;
  /** True where the direction varied by 60 degrees or more: `VRB`, or a group of extremes such as `210V280`. */
  readonly variable: boolean;
}

const metresPerSecond: Readonly<Record<SpeedUnit, number>> = {
  [SpeedUnit.Knot]: metresPerSecondPerKnot,
  [SpeedUnit.MetersPerSecond]: 1,
  [SpeedUnit.KilometersPerHour]: metresPerSecondPerKmh,
};
const pascals: Readonly<Record<AltimeterUnit, number>> = {
  [AltimeterUnit.HPa]: pascalsPerHectopascal,
  [AltimeterUnit.InHg]: pascalsPerInchOfMercury,
};

/** Why there is no wind. */
const possibleQnh = { low: 85_000, high: 109_000 };
const possibleTemperature = { low: -60, high: 60 };

/** Pa. Two pressures of one report, each rounded down in its own unit, differ by less. */
const sameQnh = 150;

/**
 * Reads one METAR or SPECI, without its trend forecasts and remarks.
 *
 * `00000KT` is calm. `VRB` has no direction and `/////KT` no wind at all, and an approach cannot be flown without
 * them: then there must be a `given` wind, from elsewhere. A given wind always replaces the report's; the report's
 * gust stays where it is the stronger.
 * @throws MetarError, and nothing else, for a text that is not a METAR or has no wind to fly in.
 */
export function readMetar(text: string, given?: Wind): MetarWeather {
  const groups = metarGroups(text);
  const reported = windOf(groups);
  const wind = given ?? reported.wind;
  if (!wind)
    throw new MetarError(`${reported.missing}: give the wind to fly with --wind, such as \`210/12kt\``);
  const gust = reported.gust !== undefined && reported.gust > wind.speed ? reported.gust : undefined;
  const variable = groups.extremes !== undefined || groups.wind?.startsWith('VRB') === true;
  return {
    station: groups.station,
    wind,
    gust,
    temperature: temperatureOf(groups),
    qnh: qnhOf(groups),
    variable,
  };
}

interface ReportedWind {
  readonly wind?: Wind;
  readonly gust?: number | undefined;
  /** Why there is no wind. */
  readonly missing?: string;
}

function windOf({ wind: group, ...groups }: MetarGroups): ReportedWind {
  if (group === undefined) return { missing: `The METAR of ${groups.station} has no group of wind` };
  if (group.includes('/'))
    return { missing: `The wind of ${groups.station} was not measured (\`${group}\`)` };
  // The decoder knows km/h in this spelling only, and takes the code's own spelling for knots.
  const { wind } = decoded(groups, group.replace('KMH', 'KM/H'));
  if (!wind)
    throw new MetarError(`\`${group}\` cannot be read as the wind of a METAR: write it as \`25009KT\``);
  const factor = metresPerSecond[wind.unit];
  if (wind.gust !== undefined && wind.gust <= wind.speed) {
    throw new MetarError(`\`${group}\`: the gust is not more than the wind: one of the two is wrong`);
  }
  const gust = wind.gust === undefined ? undefined : wind.gust * factor;
  if (wind.speed === 0) return { wind: { from: 0, speed: 0 }, gust };
  if (wind.degrees === undefined) {
    return { gust, missing: `The wind of ${groups.station} is variable (\`${group}\`) and has no direction` };
  }
  if (wind.degrees === 0 || wind.degrees > 360) {
    throw new MetarError(
      `\`${group}\`: a wind blows from 001 to 360 degrees (north is \`360\`; calm is \`00000KT\`)`,
    );
  }
  return { wind: { from: (wind.degrees % 360) * radiansPerDegree, speed: wind.speed * factor }, gust };
}

function temperatureOf(groups: MetarGroups): number | undefined {
  const group = groups.temperature;
  if (group === undefined) return undefined;
  // The decoder ignores a group without a dew point. We use no dew point, so any will do.
  const { temperature } = decoded(groups, group.replace(/^(M?\d\d)\/(?:\/\/|XX)?$/, '$1/$1'));
  if (temperature === undefined || !isWithin(temperature, possibleTemperature)) {
    throw new MetarError(`\`${group}\`: no field is at that temperature (-60 to 60 C are possible)`);
  }
  return temperature + kelvinAtZeroCelsius;
}

function qnhOf(groups: MetarGroups): number | undefined {
  const read = groups.pressures.map((group) => {
    const { altimeter } = decoded(groups, group);
    const qnh = altimeter ? altimeter.value * pascals[altimeter.unit] : Number.NaN;
    if (isWithin(qnh, possibleQnh)) return qnh;
    throw new MetarError(
      `\`${group}\`: no QNH is that (850 to 1090 hPa are possible): write \`Q0995\` for 995 hPa, \`A2992\` for 29.92 inHg`,
    );
  });
  if (Math.max(...read) - Math.min(...read) > sameQnh) {
    throw new MetarError(
      `The pressures \`${groups.pressures.join('` and `')}\` disagree: leave the right one`,
    );
  }
  return read[0];
}

/** One group decoded. The decoder is shown nothing else: in a longer report it takes any five figures for a wind. */
function decoded({ station, time }: Pick<MetarGroups, 'station' | 'time'>, group: string): IMetar {
  return parseMetar(`${station} ${time} ${group}`);
}

function isWithin(value: number, { low, high }: { readonly low: number; readonly high: number }): boolean {
  return value >= low && value <= high;
}
