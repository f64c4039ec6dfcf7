import { standardGravity } from '../flight/air/constants.ts';
import {
  kilogramsPerPound,
  metresPerFoot,
  metresPerNauticalMile,
  metresPerStatuteMile,
  pascalsPerInchOfMercury,
} from '../units/factors.ts';
import type { Topic } from './topic.ts';

export const unitFactors: Topic = {
  heading: 'Units',
  rowTopics: ['12_units'],
  quantities: {
    'nautical mile': () => metresPerNauticalMile,
    'statute mile (1760 yd)': () => metresPerStatuteMile,
    'foot (1/3 yd, yd 0.9144 m)': () => metresPerFoot,
    pound: () => kilogramsPerPound,
    'standard gravity': () => standardGravity,
    'inch of mercury, conventional': () => pascalsPerInchOfMercury,
  },
};
