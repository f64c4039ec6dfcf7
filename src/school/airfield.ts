import type { VFile } from 'vfile';
import type { z } from 'zod';
import { hasErrors } from '../messages/failures.ts';
import { variationOf } from './airfield-variation.ts';
import { camelKeys } from './camel-keys.ts';
import { checkYaml } from './check-yaml.ts';
import { crossCheck } from './cross-check.ts';
import { choice, direction, list, number, quantity, section, sidedAngle, words } from './fields.ts';
import { checkRunwayNames } from './runway-names.ts';
import { usualDay } from './variation.ts';

/** The exponent of the power-law wind profile over open ground; common practice, see the flight core's wind. */
const defaultWindExponent = 1 / 7;

const place = (example: string) => quantity('length', '-10 km', '10 km', example);

const obstacle = section(
  {
    what: words('hedge').describe('What stands there'),
    height: quantity('length', '0 m', '300 m', '12 ft').describe('Its height above the ground'),
    along: place('-140 m').describe(
      'Where it stands, along the landing direction from the spot; minus is before it',
    ),
    across: place('0 m').describe(
      'Where its middle stands, across the landing direction; plus is to the right',
    ),
    width: quantity('length', '0.1 m', '5 km', '60 m').describe(
      'How wide it is, across the landing direction',
    ),
  },
  '{ what: hedge, height: 12 ft, along: -140 m, across: 0 m, width: 60 m }',
);
const obstacles = list(obstacle, '[{ what: hedge, height: 12 ft, along: -140 m, across: 0 m, width: 60 m }]');

const runway = section(
  {
    name: words('"24"').describe('Name of the runway, in quotes; 06 and 24 are two runways'),
    heading: direction('238 deg').describe('Direction of landing, true'),
    length: quantity('length', '50 m', '5000 m', '520 m').describe('Length that can be landed on'),
    width: quantity('length', '3 m', '300 m', '25 m').describe('Width'),
    surface: words('grass').describe('Surface'),
    circuit: choice('left', 'right').describe('Side of the pattern, seen by the pilot'),
    spot: quantity('length', '0 m', '5000 m', '100 m').describe(
      'The landing spot: how far past the threshold',
    ),
    obstacles: obstacles.describe('What stands in the way of this runway').default([]),
  },
  '{ name: "24", heading: 238 deg, length: 520 m, width: 25 m, surface: grass, circuit: left, spot: 100 m }',
).refine(
  ...crossCheck(
    ['spot', 'length'],
    (spot, length) => spot! < length!,
    'must lie inside the runway, short of its `length`',
  ),
);

const landingField = section(
  {
    name: words('stubble south').describe('Name of the field'),
    along: place('-600 m').describe(
      'Where its spot lies, along the landing direction of the first runway from the spot of that; its own spot is a quarter of its length in',
    ),
    across: place('400 m').describe(
      'Where its spot lies, across the landing direction of the first runway; plus is to the right',
    ),
    heading: direction('205 deg').describe('Its best direction of landing, true'),
    length: quantity('length', '30 m', '5000 m', '260 m').describe('Length that can be landed on'),
    width: quantity('length', '3 m', '2000 m', '60 m').describe('Width'),
    surface: words('stubble').describe('What grows or lies there'),
    obstacles: obstacles.describe('What stands in the way of this field').default([]),
  },
  '{ name: stubble south, along: -600 m, across: 400 m, heading: 205 deg, length: 260 m, width: 60 m, surface: stubble }',
);

const keys = section(
  {
    name: words('Fallow Reach').describe('The airfield as the pages call it'),
    source: words('the airfield guide, date and page').describe(
      'Where these figures come from; printed with them',
    ),
    elevation: quantity('length', '-500 m', '5000 m', '310 ft').describe('Above mean sea level'),
    position: section(
      {
        latitude: sidedAngle('NS', 90, '51.2 deg N').describe('North or south of the equator'),
        longitude: sidedAngle('EW', 180, '1.5 deg W').describe('East or west of Greenwich'),
      },
      '{ latitude: 51.2 deg N, longitude: 1.5 deg W }',
    )
      .describe('Where it is on Earth; gives the magnetic variation')
      .optional(),
    variation: sidedAngle('EW', 180, '2 deg W')
      .describe('Magnetic variation from a chart; left out, it is worked out for `position`')
      .optional(),
    'wind-profile': section(
      {
        exponent: number(0, 0.6, '0.143')
          .describe('Exponent of the power law; left out, 1/7 as over open ground')
          .optional(),
        veer: quantity('angle', '-90 deg', '90 deg', '20 deg')
          .describe(
            'How far the wind turns clockwise from 10 m up to 1,000 ft; minus turns it the other way (it backs). Left out, it does not turn',
          )
          .optional(),
      },
      '{ exponent: 0.143, veer: 20 deg }',
    )
      .describe('How the wind grows and turns with height; left out, as over open ground')
      .optional(),
    pattern: section(
      {
        height: quantity('length', '100 ft', '5000 ft', '1000 ft').describe(
          'Height of the pattern above the field',
        ),
        spacing: quantity('length', '50 m', '5000 m', '500 m').describe(
          'Distance of the downwind leg from the runway',
        ),
      },
      '{ height: 1000 ft, spacing: 500 m }',
    ).describe('The traffic pattern'),
    rules: list(words('Keep the village clear.'), '[Keep the village clear.]')
      .describe('Local procedures, printed with the cautions')
      .default([]),
    runways: list(runway, '[{ name: "24", heading: 238 deg, ... }]', 1).describe(
      'The runways, each landing direction by itself',
    ),
    fields: list(landingField, '[{ name: stubble south, along: -600 m, ... }]')
      .describe('Places to land out of the pattern, for lessons about a stopped engine')
      .optional(),
  },
  '{ name: Fallow Reach, ... }',
);

/** What an airfield's file may hold. */
export const airfield = keys.transform(({ 'wind-profile': windProfile, ...rest }) => ({
  ...camelKeys(rest),
  /** Exponent of the power-law wind profile. */
  windExponent: windProfile?.exponent ?? defaultWindExponent,
  /** rad: how far that wind turns clockwise from 10 m up to 1,000 ft. */
  windVeer: windProfile?.veer,
}));

/**
 * An airfield as the school knows it: SI units and radians; directions true; variation and longitude east positive,
 * latitude north positive. Obstacles are given in the frame of their own runway's landing spot, `fields` in that of
 * the first runway: a field's spot lies a quarter of its length in, and its own obstacles are given in the frame of
 * that spot.
 */
export type AirfieldFile = z.output<typeof airfield>;

/**
 * Reads an airfield file; messages land on `file`, and where one is an error there is no value. An airfield with a
 * `position` and no `variation` of its own takes the variation of the World Magnetic Model on `day`.
 */
export function parseAirfield(file: VFile, day: Date = usualDay): AirfieldFile | undefined {
  const checked = checkYaml<AirfieldFile>(file, airfield);
  if (!checked) return undefined;
  const { source } = checked;
  const value = checked.value && {
    ...checked.value,
    variation: variationOf(source, checked.value, day),
  };
  checkRunwayNames(source, value);
  return hasErrors(file) ? undefined : value;
}
