import type { VFile } from 'vfile';
import type { z } from 'zod';
import { variationOf } from './airfield-variation.ts';
import { camelKeys } from './camel-keys.ts';
import { checkYaml } from './check-yaml.ts';
import { crossCheck } from './cross-check.ts';
import { choice, direction, list, number, quantity, section, sidedAngle, words } from './fields.ts';
import { checkRunwayNames } from './runway-names.ts';
import { usualDay } from './variation.ts';
import { hasErrors } from './yaml-source.ts';

/** The exponent of the power-law wind profile over open ground; common practice, see the flight core's wind. */
const defaultWindExponent = 1 / 7;

const place = (example: string) => quantity('length', '-10 km', '10 km', example);

const obstacle = section(
  {
    what: words('hedge'),
    height: quantity('length', '0 m', '300 m', '12 ft'),
    along: place('-140 m'),
    across: place('0 m'),
    width: quantity('length', '0.1 m', '5 km', '60 m'),
  },
  '{ what: hedge, height: 12 ft, along: -140 m, across: 0 m, width: 60 m }',
);
const obstacles = list(obstacle, '[{ what: hedge, height: 12 ft, along: -140 m, across: 0 m, width: 60 m }]');

const runway = section(
  {
    name: words('"24"'),
    heading: direction('238 deg'),
    length: quantity('length', '50 m', '5000 m', '520 m'),
    width: quantity('length', '3 m', '300 m', '25 m'),
    surface: words('grass'),
    circuit: choice('left', 'right'),
    spot: quantity('length', '0 m', '5000 m', '100 m'),
    obstacles: obstacles.default([]),
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
    name: words('stubble south'),
    along: place('-600 m'),
    across: place('400 m'),
    heading: direction('205 deg'),
    length: quantity('length', '30 m', '5000 m', '260 m'),
    width: quantity('length', '3 m', '2000 m', '60 m'),
    surface: words('stubble'),
    obstacles: obstacles.default([]),
  },
  '{ name: stubble south, along: -600 m, across: 400 m, heading: 205 deg, length: 260 m, width: 60 m, surface: stubble }',
);

const keys = section(
  {
    name: words('Fallow Reach'),
    source: words('the airfield guide, date and page'),
    elevation: quantity('length', '-500 m', '5000 m', '310 ft'),
    position: section(
      { latitude: sidedAngle('NS', 90, '51.2 deg N'), longitude: sidedAngle('EW', 180, '1.5 deg W') },
      '{ latitude: 51.2 deg N, longitude: 1.5 deg W }',
    ).optional(),
    variation: sidedAngle('EW', 180, '2 deg W').optional(),
    'wind-profile': section({ exponent: number(0, 0.6, '0.143') }, '{ exponent: 0.143 }').optional(),
    pattern: section(
      {
        height: quantity('length', '100 ft', '5000 ft', '1000 ft'),
        spacing: quantity('length', '50 m', '5000 m', '500 m'),
      },
      '{ height: 1000 ft, spacing: 500 m }',
    ),
    rules: list(words('Keep the village clear.'), '[Keep the village clear.]').default([]),
    runways: list(runway, '[{ name: "24", heading: 238 deg, ... }]', 1),
    fields: list(landingField, '[{ name: stubble south, along: -600 m, ... }]').optional(),
  },
  '{ name: Fallow Reach, ... }',
);

const airfield = keys.transform(({ 'wind-profile': windProfile, ...rest }) => ({
  ...camelKeys(rest),
  /** Exponent of the power-law wind profile. */
  windExponent: windProfile?.exponent ?? defaultWindExponent,
}));

/**
 * An airfield as the school knows it: SI units and radians; directions true; variation and longitude east positive,
 * latitude north positive. Obstacles stand in the frame of their own runway's landing spot, `fields` in that of the
 * first runway: a field's spot lies a quarter of its length in, and its obstacles stand in the frame of that spot.
 */
export type AirfieldFile = z.output<typeof airfield>;
export type RunwayFile = AirfieldFile['runways'][number];

/**
 * Reads an airfield file; messages land on `file`, and where one is an error there is no value. Without a `variation`
 * of its own, an airfield with a `position` has that of the World Magnetic Model on `day`.
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
