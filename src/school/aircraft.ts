import type { VFile } from 'vfile';
import { z } from 'zod';
import { camelKeys } from './camel-keys.ts';
import { checkYaml } from './check-yaml.ts';
import { crossCheck } from './cross-check.ts';
import { choice, list, number, quantity, ratio, section, words } from './fields.ts';

const airspeed = (example: string) => quantity('speed', '10 kt', '150 kt', example);

const bestGlide = (example: { speed: string; ratio: string }) =>
  section(
    { speed: airspeed(example.speed), ratio: ratio(1, 60, example.ratio) },
    `{ speed: ${example.speed}, ratio: ${example.ratio} }`,
  );

const sinkPoint = section(
  { speed: airspeed('36 kt'), sink: quantity('vertical-speed', '20 ft/min', '6000 ft/min', '620 ft/min') },
  '{ speed: 36 kt, sink: 620 ft/min }',
);

/** A best glide, or the measured points of a polar. */
const glide = (example: { speed: string; ratio: string }) => {
  const best = `speed: ${example.speed}, ratio: ${example.ratio}`;
  return section(
    {
      speed: airspeed(example.speed).optional(),
      ratio: ratio(1, 60, example.ratio).optional(),
      points: list(sinkPoint, '[{ speed: 36 kt, sink: 620 ft/min }, ...]', 3).optional(),
    },
    `{ ${best} }`,
  ).transform(({ speed, ratio, points }, context) => {
    const given = speed !== undefined && ratio !== undefined;
    if (points && speed === undefined && ratio === undefined) return { points };
    if (!points && given) return { speed, ratio };
    const both = points
      ? 'give `points`, or `speed` and `ratio`, not both'
      : `write \`${best}\`, or \`points\` with three or more measured ones`;
    context.addIssue({ code: 'custom', message: both });
    return z.NEVER;
  });
};

const aboveStall = 'must be more than the stall speed (`stall` in `speeds`)';

const keys = section(
  {
    name: words('Osier 15'),
    class: choice('weight-shift', 'three-axis', 'powered-parachute', 'glider'),
    source: words("the aircraft's own handbook, issue and page"),
    mass: section(
      {
        reference: quantity('mass', '50 kg', '5700 kg', '390 kg'),
        flown: quantity('mass', '50 kg', '5700 kg', '365 kg'),
      },
      '{ reference: 390 kg, flown: 365 kg }',
    ),
    wing: section(
      {
        span: quantity('length', '3 m', '40 m', '10 m'),
        'above-wheels': quantity('length', '0 m', '15 m', '2.6 m'),
      },
      '{ span: 10 m, above-wheels: 2.6 m }',
    ),
    speeds: section(
      {
        stall: quantity('speed', '10 kt', '80 kt', '29 kt'),
        touchdown: airspeed('33 kt'),
        approach: airspeed('45 kt'),
      },
      '{ stall: 29 kt, touchdown: 33 kt, approach: 45 kt }',
    ),
    glide: section(
      {
        idle: glide({ speed: '42 kt', ratio: '6.4' }),
        stopped: glide({ speed: '42 kt', ratio: '5.7' }).optional(),
      },
      '{ idle: { speed: 42 kt, ratio: 6.4 } }',
    ),
    'steep-approach': bestGlide({ speed: '52 kt', ratio: '4.1' }).optional(),
    turns: section(
      {
        bank: quantity('angle', '1 deg', '75 deg', '30 deg'),
        limit: quantity('angle', '1 deg', '75 deg', '60 deg'),
        'roll-rate': quantity('turn-rate', '2 deg/s', '180 deg/s', '20 deg/s'),
      },
      '{ bank: 30 deg, limit: 60 deg, roll-rate: 20 deg/s }',
    ),
    'round-out': section(
      {
        height: quantity('length', '1 ft', '100 ft', '15 ft').prefault('15 ft'),
        'load-factor': number(1.02, 2, '1.15').prefault('1.15'),
      },
      '{ height: 15 ft, load-factor: 1.15 }',
    ).prefault({}),
    'landing-roll': quantity('length', '5 m', '2000 m', '90 m'),
    limits: section(
      {
        wind: quantity('speed', '1 kt', '80 kt', '18 kt'),
        crosswind: quantity('speed', '1 kt', '60 kt', '9 kt'),
      },
      '{ wind: 18 kt, crosswind: 9 kt }',
    ),
    pattern: section(
      {
        height: quantity('length', '100 ft', '5000 ft', '1000 ft').optional(),
        spacing: quantity('length', '50 m', '5000 m', '500 m').optional(),
      },
      '{ height: 1000 ft, spacing: 500 m }',
    ).optional(),
    calibration: list(
      section(
        { indicated: airspeed('40 kt'), equivalent: airspeed('42 kt') },
        '{ indicated: 40 kt, equivalent: 42 kt }',
      ),
      '[{ indicated: 40 kt, equivalent: 42 kt }, ...]',
      1,
    ).optional(),
    'engine-failure': list(
      words('Fly the glide speed first.'),
      '[Fly the glide speed first., ...]',
      1,
    ).optional(),
  },
  '{ name: Osier 15, ... }',
)
  .refine(
    ...crossCheck(
      ['speeds.touchdown', 'speeds.stall'],
      (touchdown, stall) => touchdown! >= stall!,
      'must not be less than the stall speed (`stall` in `speeds`)',
    ),
  )
  .refine(
    ...crossCheck(
      ['speeds.approach', 'speeds.touchdown'],
      (approach, touchdown) => approach! > touchdown!,
      'must be more than the touchdown speed (`touchdown` in `speeds`)',
    ),
  )
  .refine(...crossCheck(['glide.idle.speed', 'speeds.stall'], (glide, stall) => glide! > stall!, aboveStall))
  .refine(
    ...crossCheck(['glide.stopped.speed', 'speeds.stall'], (glide, stall) => glide! > stall!, aboveStall),
  )
  .refine(
    ...crossCheck(['steep-approach.speed', 'speeds.stall'], (glide, stall) => glide! > stall!, aboveStall),
  )
  .refine(
    ...crossCheck(
      ['steep-approach.ratio', 'glide.idle.ratio'],
      (steep, idle) => steep! < idle!,
      'must be less than the ratio of the glide (`ratio` in `glide`, `idle`): a steep approach loses more height',
    ),
  )
  .refine(
    ...crossCheck(
      ['turns.bank', 'turns.limit'],
      (bank, limit) => bank! <= limit!,
      'must not be more than the bank limit (`limit` in `turns`)',
    ),
  )
  .refine(
    ...crossCheck(
      ['mass.flown', 'mass.reference'],
      (flown, reference) => flown! >= 0.4 * reference! && flown! <= 1.5 * reference!,
      'must be 0.4 to 1.5 times the reference mass (`reference` in `mass`)',
    ),
  );

const aircraft = keys.transform(camelKeys);

/**
 * An aircraft as the school knows it: SI units and radians, airspeeds as indicated, all at the reference mass. Keys as in the
 * file, in camelCase. `engineFailure` holds the checklist lines in order.
 */
export type AircraftFile = z.output<typeof aircraft>;

/** Reads an aircraft file; messages land on `file`, and where one is an error there is no value. */
export function parseAircraft(file: VFile): AircraftFile | undefined {
  return checkYaml(file, aircraft)?.value;
}
