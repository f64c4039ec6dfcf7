import { type MetarWeather, readMetar } from '../school/metar.ts';
import { MetarError } from '../school/metar-groups.ts';
import type { Wind } from '../units/wind-text.ts';

/** The weather options of a command, in SI units: each overrides what the METAR says. */
export interface WeatherOptions {
  readonly metar?: string | undefined;
  readonly wind?: Wind | undefined;
  readonly gust?: number | undefined;
  readonly temperature?: number | undefined;
  readonly qnh?: number | undefined;
}

export type Weather = Omit<WeatherOptions, 'metar'>;

export const metarHelp =
  'report to take wind, gust, temperature and QNH from; the options for these go before it';

/** The weather that the options ask for; undefined, with a message on standard error, where the METAR is unreadable. */
export function weatherOf(options: WeatherOptions): Weather | undefined {
  const { metar, wind, gust, temperature, qnh } = options;
  if (metar === undefined) return { wind, gust, temperature, qnh };
  let reported: MetarWeather;
  try {
    reported = readMetar(metar, wind);
  } catch (error) {
    if (!(error instanceof MetarError)) throw error;
    process.stderr.write(`--metar: ${error.message}\n`);
    return undefined;
  }
  if (reported.variable && wind === undefined) {
    process.stderr.write(
      '--metar: the wind varies in direction; the figures are for the mean that the report gives. Build for its extremes as well (--wind).\n',
    );
  }
  return {
    wind: reported.wind,
    gust: gust ?? reported.gust,
    temperature: temperature ?? reported.temperature,
    qnh: qnh ?? reported.qnh,
  };
}
