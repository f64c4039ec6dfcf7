import { sinOfGlide } from '../flight/aircraft/glide.ts';
import {
  radiansPerDegree as degree,
  metresPerSecondPerKnot as knot,
  metresPerFoot,
  metresPerNauticalMile,
  metresPerSecondPerFootPerMinute,
} from '../units/factors.ts';
import { input, type Published } from './published.ts';
import type { Topic } from './topic.ts';

/** Feet lost in a nautical mile at the best glide of a ratio, through the polar. */
const feetPerMile = (ratio: number) => {
  const sin = sinOfGlide({ speed: 30, ratio }, 30, 1);
  return (Math.tan(Math.asin(sin)) * metresPerNauticalMile) / metresPerFoot;
};

export const glideRatio: Topic = {
  heading: 'Glide ratio',
  rowTopics: ['5_glide'],
  quantities: {
    'glide ratio': (row) => {
      const ratio = input(row, 'dist_ft') / input(row, 'loss_ft');
      return 1 / Math.tan(Math.asin(sinOfGlide({ speed: 30, ratio }, 30, 1)));
    },
    'height lost': (row) => feetPerMile(input(row, 'ratio')) * input(row, 'dist_nm'),
    'L/D at twice best-glide speed': (row) => {
      const polar = { speed: input(row, 'Vbg_kt') * knot, ratio: input(row, 'LDmax') };
      return 1 / Math.tan(Math.asin(sinOfGlide(polar, input(row, 'V_kt') * knot, 1)));
    },
  },
};

/** Sink in ft/min at the best glide of a polar, from the angle of that glide. */
const rateOfDescent = (row: Published) => {
  const speed = input(row, 'speed_kt') * knot;
  const polar = { speed, ratio: 1 / Math.tan(input(row, 'angle_deg') * degree) };
  return (speed * sinOfGlide(polar, speed, 1)) / metresPerSecondPerFootPerMinute;
};

export const ratesOfDescent: Topic = {
  heading: 'Rates of descent',
  about:
    'The printed table is rounded to 5 ft/min, unevenly at the steep end; it follows the sine of the angle, as the core does, and not the tangent.',
  rowTopics: ['7_final_geometry'],
  quantities: {
    'rate of descent (printed)': rateOfDescent,
    '3 degree path': () => feetPerMile(1 / Math.tan(3 * degree)),
    'maximum straight-in gradient': () => {
      const gradient = 400;
      const ratio = metresPerNauticalMile / (gradient * metresPerFoot);
      return [gradient, Math.asin(sinOfGlide({ speed: 30, ratio }, 30, 1)) / degree];
    },
  },
};
