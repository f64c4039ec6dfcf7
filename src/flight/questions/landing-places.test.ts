import { describe, expect, it } from 'vitest';
import { requestFor, runwayHeading, windOffRunway } from '../../../tests/flight-school.ts';
import { landingRunOf } from '../aircraft/landing-run.ts';
import type { Position } from '../flying/reach.ts';
import { planApproach } from '../plan/planner.ts';
import { resolveRequest } from '../plan/request.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { graverFirst, lessAgainstFirst, type Rejection } from './against-a-place.ts';
import { type Field, landingPlaces, type Place } from './landing-places.ts';

const foot = 0.3048;
const turn = 2 * Math.PI;
const wrapped = (angle: number) => ((angle % turn) + turn) % turn;

/** Beside final, nearly on the landing heading. */
const position: Position = { along: -600, across: -600, height: 1400 * foot, heading: 0.3 };
const good: Field = {
  name: 'stubble',
  along: -300,
  across: -500,
  heading: runwayHeading,
  length: 600,
  width: 60,
  surface: 'stubble',
  obstacles: [],
};
/** A runway with no other end and nothing in the way. */
const plain = (changes: Partial<PlanRequest> = {}): PlanRequest => {
  const request = requestFor('osier', { wind: windOffRunway(0, 8), ...changes });
  const runway = { ...request.runway, obstacles: [] };
  return { ...request, runway, airfield: { ...request.airfield, runways: [runway] } };
};

/** In a wind from this many degrees to the right of the runway's heading, kt; calm where none is given. */
const requestIn = (off: number, knots = 0, gust?: number) =>
  plain({ wind: windOffRunway(off, knots), gust: gust && gust * (1852 / 3600) });

function resolved() {
  const { conditions, flown } = resolveRequest(plain());
  return { ...conditions, flown };
}

const placesFor = (fields: readonly Field[], request = plain(), from = position) =>
  landingPlaces(from, fields, request);
/** The place in the direction that a field is given in. */
const among = (places: readonly Place[], { name, heading }: Field): Place =>
  places.find((each) => each.name === name && Math.abs(Math.sin((each.heading - heading) / 2)) < 1e-6)!;
const placed = (field: Field, request = plain(), from = position): Place =>
  among(placesFor([field], request, from), field);
/** The place of the runway itself. */
const own = (request = plain(), from = position) => placesFor([], request, from)[0]!;

/** m: the landing roll on the field, in the wind that is along it. */
const roll = landingRunOf({ ...resolved(), runway: good });
const trees = { what: 'trees', height: 25, along: -200, across: 0, width: 80 };
const far = { ...good, name: 'far', along: 5000 };
/** The spot is a quarter of the length in: 15 m are lacking. */
const short = { ...good, name: 'short', length: roll / 0.75 - 20 };
const enough = { ...good, name: 'enough', length: roll / 0.75 + 2 };
const hedged = { ...good, name: 'hedged', obstacles: [trees] };
const beside = { ...good, name: 'beside', obstacles: [{ ...trees, across: 3000 }] };
/** All of them from one place in one wind, because they take a while. */
const places = placesFor([far, short, enough, hedged, beside, good]);
const whys = ({ rejections }: Place) => rejections.map(({ why }) => why);
const reason = (place: Place, why: Rejection['why']) => place.rejections.find((each) => each.why === why);

describe('where to land', () => {
  it('counts every runway and both directions of every field', () => {
    const request = requestFor('osier', { wind: windOffRunway(0, 8) });
    const names = landingPlaces(position, [good], request).map(({ name }) => name);
    expect([...names].sort()).toEqual(['runway 06', 'runway 24', 'stubble', 'stubble']);
  });

  it('puts a near field into wind before the same one downwind, far away or short', () => {
    const at = (name: string) => places.findIndex((each) => each.name === name && each.headwind > 0);
    expect(at('stubble')).toBeLessThan(at('far'));
    expect(at('stubble')).toBeLessThan(at('short'));
    const downwind = places.findIndex((each) => each.name === 'stubble' && each.headwind < 0);
    expect(at('stubble')).toBeLessThan(downwind);
  });

  it('puts what is against a place in the order of its gravity, not of its number', () => {
    expect(places[0]!.rejections).toEqual([]);
    for (const [i, place] of places.entries()) {
      const next = places[i + 1];
      if (next) expect(lessAgainstFirst(place.rejections, next.rejections)).toBeLessThanOrEqual(0);
      expect([...place.rejections].sort(graverFirst)).toEqual(place.rejections);
    }
    // The field asked about has two reasons against it; the one 9 km away has one.
    const nearly = { ...hedged, name: 'nearly', length: roll / 0.75 - 2 };
    const order = placesFor([nearly, { ...far, name: '9 km away', along: 9000 }]);
    const at = (name: string) => order.findIndex((each) => each.name === name && each.headwind > 0);
    expect(whys(order[at('nearly')]!).sort()).toEqual(['obstacle', 'too-short']);
    expect((reason(order[at('nearly')]!, 'too-short') as { short: number }).short).toBeCloseTo(1.5, 1);
    expect(whys(order[at('9 km away')]!)).toEqual(['out-of-reach']);
    expect(at('nearly')).toBeLessThan(at('9 km away'));
  });

  it('takes no pattern through an obstacle where another way is clear of it', () => {
    const calm = requestIn(0);
    const from = { ...position, across: 0, heading: 0, height: 1800 * foot };
    const clear = own(calm, from);
    const { circuit } = clear.approach!;
    const { spacing } = resolveRequest(calm).flown;
    // A mast at the downwind key.
    const across = circuit === 'left' ? -spacing : spacing;
    const mast = { what: 'mast', height: 1000 * foot, along: 0, across, width: 20 };
    const runway = { ...calm.runway, obstacles: [mast] };
    const place = own({ ...calm, runway }, from);
    expect(whys(place)).toEqual([]);
    expect(place.approach).toEqual({ ...clear.approach, circuit: circuit === 'left' ? 'right' : 'left' });
  });

  it('takes no pattern whose plan is not to be flown', () => {
    // Turns so steep that the glide speed in them is hardly above the stall.
    const windy = requestFor('withy', { wind: windOffRunway(30, 8), bank: (55 * Math.PI) / 180 });
    const bad = planApproach({ ...windy, approach: '90' });
    expect(bad.cautions).toContainEqual(
      expect.objectContaining({ code: 'stall-margin', grade: 'not-to-be-flown' }),
    );
    for (const height of [700, 1000, 1300, 1600]) {
      const place = landingPlaces({ ...position, height: height * foot }, [], windy).find(
        ({ name }) => name === 'runway 24',
      )!;
      expect(place.approach).toBeUndefined();
    }
  });

  it('says the headwind of each landing direction', () => {
    for (const place of places) {
      const expected = 8 * (1852 / 3600) * Math.cos(place.heading - runwayHeading);
      expect(place.headwind).toBeCloseTo(expected, 9);
    }
  });

  it('has the margin of each key: height there less the low edge of its gate', () => {
    const place = own();
    expect(place.approach).toBeDefined();
    const kind = place.approach!.kind === '90' ? '90' : '180';
    const plan = planApproach(plain({ approach: kind, circuit: place.approach!.circuit }));
    place.margins.forEach(({ at, height, margin }) => {
      const gate = plan.gates.find((each) => each.at === at)!;
      expect(margin).toBeCloseTo(height - gate.low!, 3);
    });
    expect(place.margins[0]!.margin).toBeGreaterThan(0);
  });

  it('circles first where it comes to the downwind key higher than a 180 can lose', () => {
    const high = own(plain(), { ...position, height: 4000 * foot });
    expect(high.approach!.kind).toBe('spiral');
    expect(high.excess).toBeGreaterThan(0);
    const low = own(plain(), { along: 300, across: -500, height: 1000 * foot, heading: Math.PI });
    expect(low.excess).toBe(0);
    expect(low.approach!.kind).not.toBe('spiral');
  });

  it('has more in hand from higher up, by as much', () => {
    const [low, high] = [1600, 1700].map((feet) => own(requestIn(0), { ...position, height: feet * foot }));
    expect(high!.margins[0]!.margin - low!.margins[0]!.margin).toBeCloseTo(100 * foot, 0);
  });
});

describe('a place whose pattern is not reached', () => {
  const windy = requestFor('osier', { power: 'stopped', wind: windOffRunway(-28, 12) });
  const turnedBack: Position = { along: -900, across: -300, height: 1100 * foot, heading: -2.618 };
  const runway = (from: Position) => landingPlaces(from, [], windy).find(({ name }) => name === 'runway 24')!;

  it('is in reach where a final is: straight in, with the height over its near end', () => {
    const place = runway(turnedBack);
    expect(whys(place)).toEqual([]);
    expect(place.approach).toBeUndefined();
    expect(place.margins).toEqual([
      { at: 'final', height: place.straightIn!.height, margin: place.straightIn!.spare },
    ]);
    expect(place.straightIn!.overNearEnd).toBeGreaterThan(200 * foot);
  });

  it('is out of reach where no final is reached either', () => {
    const place = runway({ ...turnedBack, height: 700 * foot });
    expect(whys(place)).toEqual(['out-of-reach']);
    expect(place.straightIn).toBeUndefined();
  });

  it('comes after one whose pattern is, and before those out of reach', () => {
    const below = { ...good, name: 'below', along: -1250, across: 350 };
    const order = landingPlaces(turnedBack, [below, far], windy).filter(
      ({ rejections }) => rejections.length === 0,
    );
    const straight = order.findIndex((place) => place.straightIn);
    expect(straight).toBeGreaterThan(0);
    expect(order.slice(straight).every((place) => place.approach === undefined)).toBe(true);
  });
});

describe('a reason against a place', () => {
  it('is none for a near field into wind', () => {
    expect(whys(among(places, good))).toEqual([]);
  });

  it('is being out of reach, by how much', () => {
    expect(whys(among(places, far))).toEqual(['out-of-reach']);
    const still = placed(far, requestIn(0));
    expect(still.approach).toBeUndefined();
    const lacking = (reason(still, 'out-of-reach') as { short: number }).short;
    expect(lacking).toBeGreaterThan(0);
    expect(lacking).toBeCloseTo(-still.margins[0]!.margin, 9);
    // That much more height, and a little, is enough in still air.
    const from = { ...position, height: position.height + lacking + 1 };
    expect(whys(placed(far, requestIn(0), from))).not.toContain('out-of-reach');
  });

  it('is an obstacle under the path, and none beside it', () => {
    const place = among(places, hedged);
    expect(whys(place)).toEqual(['obstacle']);
    expect(reason(place, 'obstacle')).toMatchObject({ what: 'trees', limit: expect.closeTo(50 * foot, 9) });
    expect(whys(among(places, beside))).toEqual([]);
  });

  it('is being too short for the landing roll, by what is lacking', () => {
    expect(whys(among(places, enough))).toEqual([]);
    const place = among(places, short);
    expect(whys(place)).toEqual(['too-short']);
    expect((reason(place, 'too-short') as { short: number }).short).toBeCloseTo(15, 1);
  });

  it('is more than 5 kt of wind from behind', () => {
    const tail = (knots: number) => own(requestIn(180, knots));
    expect(whys(tail(4.9))).not.toContain('tailwind');
    expect(whys(tail(5.1))).toContain('tailwind');
    expect(reason(tail(8), 'tailwind')).toMatchObject({ value: expect.closeTo(8 * (1852 / 3600), 9) });
    const { aircraft } = plain();
    const behind = { wind: windOffRunway(180, 4.9) };
    const ofSchool = own(plain({ ...behind, minimums: { mostTailwind: 4 * (1852 / 3600) } }));
    expect(whys(ofSchool)).toContain('tailwind');
    const limits = { ...aircraft.limits, tailwind: 4 * (1852 / 3600) };
    expect(whys(own(plain({ ...behind, aircraft: { ...aircraft, limits } })))).toContain('tailwind');
  });

  it("is wind across over the aircraft's limit of 9 kt, gusts counted", () => {
    const across = (knots: number, gust?: number) => own(requestIn(90, knots, gust));
    expect(whys(across(8.9))).not.toContain('crosswind');
    expect(whys(across(9.1))).toContain('crosswind');
    expect(whys(across(6, 10))).toContain('crosswind');
  });

  it("is wind over the aircraft's limit of 18 kt", () => {
    const ahead = (knots: number) => own(requestIn(0, knots), { ...position, height: 2500 * foot });
    expect(whys(ahead(17.9))).not.toContain('wind');
    expect(whys(ahead(18.1))).toContain('wind');
  });
});

describe('a field given in the frame of a runway', () => {
  /** A field with the figures of the runway, its spot where the runway's is, as far as a quarter of its length allows. */
  const like = (along: number, across: number, heading: number): Field => ({
    ...good,
    name: 'like',
    along,
    across,
    heading: wrapped(heading),
    length: plain().runway.length,
    width: plain().runway.width,
  });
  const same = (a: Place, b: Place) => {
    expect(a.approach).toEqual(b.approach);
    expect(a.headwind).toBeCloseTo(b.headwind, 9);
    expect(a.margins.map(({ at }) => at)).toEqual(b.margins.map(({ at }) => at));
    a.margins.forEach((margin, i) => {
      expect(Math.abs(margin.height - b.margins[i]!.height)).toBeLessThan(0.3);
      expect(Math.abs(margin.margin - b.margins[i]!.margin)).toBeLessThan(0.3);
    });
  };

  it("at the runway's own spot and heading has the runway's own margins", () => {
    same(placed(like(0, 0, runwayHeading)), own());
  });

  it('elsewhere has those of the runway from a position as far away', () => {
    const field = like(700, -900, runwayHeading);
    const from = { ...position, along: position.along + 700, across: position.across - 900 };
    same(placed(field, plain(), from), own());
  });

  it('turned, has those of the runway with position and wind turned as much', () => {
    for (const degrees of [50, -120]) {
      const by = (degrees * Math.PI) / 180;
      const [cos, sin] = [Math.cos(by), Math.sin(by)];
      const from: Position = {
        along: position.along * cos - position.across * sin,
        across: position.along * sin + position.across * cos,
        height: position.height,
        heading: position.heading + by,
      };
      const field = like(0, 0, runwayHeading + by);
      same(placed(field, requestIn(degrees + 20, 7), from), own(requestIn(20, 7)));
    }
  });

  it('is landed the other way as if it had been given the other way round', () => {
    // The other spot lies half the length farther on: a quarter from the other end.
    const there = like(0, 0, runwayHeading);
    const back = { ...like(there.length / 2, 0, runwayHeading + Math.PI), name: 'back' };
    const request = requestIn(180, 8);
    const other = placesFor([there], request).find(({ name, headwind }) => name === 'like' && headwind > 0)!;
    same(other, placed(back, request));
  });
});

describe('the other end of a runway', () => {
  it('is the same strip: its place is that of the runway asked for from there', () => {
    const request = requestFor('osier', { wind: windOffRunway(180, 8) });
    const [one, two] = request.airfield.runways;
    const seen = landingPlaces(position, [], request).find(({ name }) => name === 'runway 06')!;
    const apart = one!.length - one!.spot - two!.spot;
    const fromThere: Position = {
      along: apart - position.along,
      across: -position.across,
      height: position.height,
      heading: position.heading - Math.PI,
    };
    const own = landingPlaces(fromThere, [], { ...request, runway: two! }).find(
      ({ name }) => name === 'runway 06',
    )!;
    expect(own.approach).toEqual(seen.approach);
    for (const [i, { margin }] of own.margins.entries()) {
      expect(margin).toBeCloseTo(seen.margins[i]!.margin, 0);
    }
  });
});
