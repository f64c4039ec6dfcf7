import {
  fieldAir,
  pressureAltitude,
  standardDensity,
  standardPressure,
  standardTemperature,
  stationPressure,
} from '../flight/air/air.ts';
import { lapseRate, seaLevelDensity, seaLevelPressure } from '../flight/air/constants.ts';
import { kelvinAtZeroCelsius, metresPerFoot, pascalsPerInchOfMercury } from '../units/factors.ts';
import { parseQuantity } from '../units/quantity.ts';
import { input, numbersOf, type Published } from './published.ts';
import { asGiven } from './row-words.ts';
import type { FormPoint, Topic } from './topic.ts';

const inHg = pascalsPerInchOfMercury;
const fahrenheit = (kelvin: number) => ((kelvin - kelvinAtZeroCelsius) * 9) / 5 + 32;
const kelvin = (degreesFahrenheit: number) => parseQuantity(`${degreesFahrenheit} F`, 'temperature');
/** Altitude of a row in m. */
const altitude = (row: Published) => input(row, 'H_ft') * metresPerFoot;

export const standardAtmosphere: Topic = {
  heading: 'The standard atmosphere',
  rowTopics: ['1_atmosphere'],
  quantities: {
    'density ratio': (row) => standardDensity(altitude(row)) / seaLevelDensity,
    'root of the density ratio': (row) => Math.sqrt(standardDensity(altitude(row)) / seaLevelDensity),
    'pressure ratio': (row) => standardPressure(altitude(row)) / seaLevelPressure,
    'temperature ratio': (row) => standardTemperature(altitude(row)) / standardTemperature(0),
    temperature: (row) => fahrenheit(standardTemperature(altitude(row))),
    'sea-level standard pressure': () => standardPressure(0) / inHg,
    'sea-level density': () => standardDensity(0),
    'pressure at tropopause': (row) => standardPressure(input(row, 'H_m')),
    'density at tropopause': (row) => standardDensity(input(row, 'H_m')),
    'tropospheric lapse': () => lapseRate * metresPerFoot,
  },
};

const pressureAltitudeFeet = (row: Published) =>
  pressureAltitude(
    stationPressure(input(row, 'altimeter_inHg') * inHg, input(row, 'elev_ft') * metresPerFoot),
  ) / metresPerFoot;

export const densityAltitude: Topic = {
  heading: 'Pressure altitude and density altitude',
  rowTopics: ['2_density_altitude'],
  quantities: {
    'pressure-altitude correction': (row) =>
      pressureAltitude(input(row, 'altimeter_inHg') * inHg) / metresPerFoot,
    'pressure altitude': pressureAltitudeFeet,
    'pressure altitude at sea-level field': pressureAltitudeFeet,
    'density altitude': (row) =>
      fieldAir(
        input(row, 'elev_ft') * metresPerFoot,
        kelvin(input(row, 'OAT_F')),
        input(row, 'altimeter_inHg') * inHg,
      ).densityAltitude / metresPerFoot,
  },
  forms: { da_nws_coeffs: weatherServiceForm },
};

/** Elevation (ft), altimeter setting (inHg) and temperature (°F) at which the published expression is tried. */
const fields = [
  [0, 29.92, 59],
  [1500, 30.1, 80],
  [5883, 30.1, 70],
  [4000, 29.5, 100],
] as const;

/** h = a (1 - (b P/T)^c), P in inHg at the station, T in degrees Rankine, dry. */
function weatherServiceForm(row: Published): FormPoint[] {
  const [a, b, c] = numbersOf(row) as [number, number, number];
  return fields.map(([feet, setting, outside]) => {
    const air = fieldAir(feet * metresPerFoot, kelvin(outside), setting * inHg);
    return {
      inputs: `elevation ${asGiven(feet)} ft, altimeter ${setting} inHg, ${outside} °F`,
      theirs: a * (1 - (b * (air.pressure / inHg / (outside + 459.67))) ** c),
      ours: air.densityAltitude / metresPerFoot,
      allowed: 30,
      unit: 'ft',
    };
  });
}
