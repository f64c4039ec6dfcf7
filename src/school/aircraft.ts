import type { VFile } from 'vfile';
import { z } from 'zod';
import { aircraftClasses } from '../flight/terms/aircraft-class.ts';
import { camelKeys } from './camel-keys.ts';
import { checkYaml } from './check-yaml.ts';
import { crossCheck } from './cross-check.ts';
import { choice, list, number, quantity, ratio, section, words } from './fields.ts';
import { wholeNumberForm } from './written-form.ts';

const airspeed = (example: string) => quantity('speed', '10 kt', '150 kt', example);

const bestGlide = (example: { speed: string; ratio: string }) =>
  section(
    {
      speed: airspeed(example.speed).describe('Airspeed of this glide, as the indicator shows it'),
      ratio: ratio(1, 60, example.ratio).describe(
        'Distance flown for one of height lost, wings level, still air',
      ),
    },
    `{ speed: ${example.speed}, ratio: ${example.ratio} }`,
  );

const flapOf = (speed: string) => words('up').describe(`Flap for ${speed}`).optional();

const sinkPoint = section(
  {
    speed: airspeed('36 kt').describe('Airspeed of the measured point'),
    sink: quantity('vertical-speed', '20 ft/min', '6000 ft/min', '620 ft/min').describe(
      'Height lost in a minute at this speed, wings level, still air',
    ),
  },
  '{ speed: 36 kt, sink: 620 ft/min }',
);

/** The same, for an editor. */
const oneWayOrTheOther = [
  { required: ['speed', 'ratio'], properties: { points: false } },
  { required: ['points'], properties: { speed: false, ratio: false } },
];

/** A best glide, or the measured points of a polar. */
const glide = (example: { speed: string; ratio: string }) => {
  const best = `speed: ${example.speed}, ratio: ${example.ratio}`;
  return section(
    {
      speed: airspeed(example.speed)
        .describe('Best-glide speed at the reference mass, as the indicator shows it')
        .optional(),
      ratio: ratio(1, 60, example.ratio)
        .describe('Best glide: distance flown for one of height lost, wings level, still air')
        .optional(),
      points: list(sinkPoint, '[{ speed: 36 kt, sink: 620 ft/min }, ...]', 3)
        .describe('Three or more measured points, in place of `speed` and `ratio`')
        .optional(),
    },
    `{ ${best} }`,
  )
    .transform(({ speed, ratio, points }, context) => {
      const given = speed !== undefined && ratio !== undefined;
      if (points && speed === undefined && ratio === undefined) return { points };
      if (!points && given) return { speed, ratio };
      const both = points
        ? 'give `points`, or `speed` and `ratio`, not both'
        : `write \`${best}\`, or \`points\` with three or more measured ones`;
      context.addIssue({ code: 'custom', message: both });
      return z.NEVER;
    })
    .meta({ anyOf: oneWayOrTheOther });
};

interface CalibrationRow {
  readonly indicated: number;
  readonly equivalent: number;
}

const risesFrom = (below: CalibrationRow, row: CalibrationRow) =>
  row.indicated > below.indicated && row.equivalent > below.equivalent;
const mustRise = 'both speeds must be more than those of the row before it: write the slowest row first';

const aboveStall = 'must be more than the stall speed (`stall` in `speeds`)';

const keys = section(
  {
    name: words('Osier 15').describe('The aircraft as the pages call it'),
    class: choice(...aircraftClasses).describe(
      'Class of aircraft; lessons can hold words for one class alone',
    ),
    seats: number(1, 20, '2')
      .refine(Number.isInteger, 'write a whole number, such as `2`')
      .meta({ ...wholeNumberForm(1, 20) })
      .describe('Seats; a lesson can hold words for one seat alone')
      .prefault('2'),
    source: words("the aircraft's own handbook, issue and page").describe(
      'Where these figures come from; printed under every table made from them',
    ),
    mass: section(
      {
        reference: quantity('mass', '50 kg', '5700 kg', '390 kg').describe(
          'The mass that the figures of this file are for, people and fuel included',
        ),
        flown: quantity('mass', '50 kg', '5700 kg', '365 kg').describe(
          'The mass that lessons are flown at; speeds are worked out for it',
        ),
        most: quantity('mass', '50 kg', '5700 kg', '450 kg')
          .describe('The most that it may be flown at; a flight at more is not to be flown')
          .optional(),
        least: quantity('mass', '50 kg', '5700 kg', '300 kg')
          .describe('The least that it may be flown at; a flight at less is not to be flown')
          .optional(),
      },
      '{ reference: 390 kg, flown: 365 kg }',
    ).describe('Masses, all told'),
    wing: section(
      {
        span: quantity('length', '3 m', '40 m', '10 m').describe('Wing span, tip to tip'),
        'above-wheels': quantity('length', '0 m', '15 m', '2.6 m').describe(
          'Height of the wing over the wheels, for ground effect',
        ),
      },
      '{ span: 10 m, above-wheels: 2.6 m }',
    ).describe('The wing'),
    speeds: section(
      {
        stall: quantity('speed', '10 kt', '80 kt', '29 kt').describe('Stall speed, wings level'),
        touchdown: airspeed('33 kt').describe('Speed as the wheels touch; not below the stall speed'),
        approach: airspeed('45 kt').describe('Speed on final; above the touchdown speed'),
      },
      '{ stall: 29 kt, touchdown: 33 kt, approach: 45 kt }',
    ).describe('Airspeeds as the indicator shows them, at the reference mass'),
    glide: section(
      {
        idle: glide({ speed: '42 kt', ratio: '6.4' }).describe('The glide with the engine idling'),
        stopped: glide({ speed: '42 kt', ratio: '5.7' })
          .describe('The glide with the engine stopped; a lesson with `power: stopped` needs it')
          .optional(),
      },
      '{ idle: { speed: 42 kt, ratio: 6.4 } }',
    ).describe('Glide through the air, wings level: the best one, or measured points'),
    'steep-approach': bestGlide({ speed: '52 kt', ratio: '4.1' })
      .describe(
        'The steeper glide that loses height on purpose, and is ended at 150 ft: faster, or in a slip; its ratio is less than that of `idle`',
      )
      .optional(),
    flap: section(
      {
        stall: flapOf('the stall speed'),
        touchdown: flapOf('the touchdown speed'),
        approach: flapOf('the speed on final'),
        glide: flapOf('the best glide'),
        'steep-approach': flapOf('the steep approach'),
      },
      '{ glide: up, approach: up, steep-approach: full }',
    )
      .describe(
        'Where the flap stands at each of these speeds, in the words of the handbook; printed beside them',
      )
      .optional(),
    turns: section(
      {
        bank: quantity('angle', '1 deg', '75 deg', '30 deg').describe('Bank of the turns as planned'),
        limit: quantity('angle', '1 deg', '75 deg', '60 deg').describe("The handbook's most bank"),
        'roll-rate': quantity('turn-rate', '2 deg/s', '180 deg/s', '20 deg/s').describe(
          'How fast the aircraft rolls into a turn and out of it',
        ),
      },
      '{ bank: 30 deg, limit: 60 deg, roll-rate: 20 deg/s }',
    ).describe('How it is turned'),
    'round-out': section(
      {
        height: quantity('length', '1 ft', '100 ft', '15 ft')
          .describe('Height of the wheels where the round-out begins')
          .prefault('15 ft'),
        'load-factor': number(1.02, 2, '1.15').describe('Load factor of the pull').prefault('1.15'),
      },
      '{ height: 15 ft, load-factor: 1.15 }',
    )
      .describe('The round-out')
      .prefault({}),
    'landing-roll': quantity('length', '5 m', '2000 m', '90 m').describe(
      'From touchdown to the stop, in a calm, in standard air at sea level and at the reference mass; pages bring it to their wind, air and mass',
    ),
    limits: section(
      {
        wind: quantity('speed', '1 kt', '80 kt', '18 kt').describe('Strongest wind it is flown in'),
        crosswind: quantity('speed', '1 kt', '60 kt', '9 kt').describe(
          'Strongest wind across the runway it is landed in',
        ),
        tailwind: quantity('speed', '0 kt', '30 kt', '5 kt')
          .describe('Strongest wind from behind it is landed in; left out, more than 5 kt draw a caution')
          .optional(),
      },
      '{ wind: 18 kt, crosswind: 9 kt }',
    ).describe('Limits of wind at the surface'),
    pattern: section(
      {
        height: quantity('length', '100 ft', '5000 ft', '1000 ft')
          .describe('Height of the pattern above the field')
          .optional(),
        spacing: quantity('length', '50 m', '5000 m', '500 m')
          .describe('Distance of the downwind leg from the runway')
          .optional(),
      },
      '{ height: 1000 ft, spacing: 500 m }',
    )
      .describe("This aircraft's own pattern, where it is not the airfield's")
      .optional(),
    calibration: list(
      section(
        {
          indicated: airspeed('40 kt').describe('What the airspeed indicator shows'),
          equivalent: airspeed('42 kt').describe(
            'The equivalent airspeed then: free of the errors of the instrument',
          ),
        },
        '{ indicated: 40 kt, equivalent: 42 kt }',
      ),
      '[{ indicated: 40 kt, equivalent: 42 kt }, ...]',
      1,
    )
      .superRefine((rows, context) => {
        const stuck = rows.findIndex((row, i) => i > 0 && !risesFrom(rows[i - 1]!, row));
        if (stuck > 0) context.addIssue({ code: 'custom', path: [stuck], message: mustRise });
      })
      .describe('Errors of the airspeed indicator, at one or more speeds')
      .optional(),
    'engine-failure': list(words('Fly the glide speed first.'), '[Fly the glide speed first., ...]', 1)
      .describe("The engine-failure checklist, in the order of the aircraft's own handbook")
      .optional(),
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
      ['mass.most', 'mass.least'],
      (most, least) => most! > least!,
      'must be more than the least mass (`least` in `mass`)',
    ),
  )
  .refine(
    ...crossCheck(
      ['mass.flown', 'mass.reference'],
      (flown, reference) => flown! >= 0.4 * reference! && flown! <= 1.5 * reference!,
      'must be 0.4 to 1.5 times the reference mass (`reference` in `mass`)',
    ),
  );

/** What an aircraft's file may hold. */
export const aircraft = keys.transform(camelKeys);

/**
 * An aircraft as the school knows it: SI units and radians, airspeeds as indicated, all at the reference mass. The
 * keys are those of the file, in camelCase. `engineFailure` holds the checklist lines in order.
 */
export type AircraftFile = z.output<typeof aircraft>;

/** Reads an aircraft file; messages land on `file`, and where one is an error there is no value. */
export function parseAircraft(file: VFile): AircraftFile | undefined {
  return checkYaml(file, aircraft)?.value;
}
