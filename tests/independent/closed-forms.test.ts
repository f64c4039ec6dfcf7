import { describe, expect, it } from 'vitest';
import { Flight, untilAcross, untilAlong, untilHeight } from './flight.ts';
import { drag, farthestSpeed, inducedLeft, sinGlide } from './polar.ts';
import { BANK, EAS, H, PSI, type State, X, Y } from './rates.ts';
import { g, thinnessOf, type Wind, type World } from './world.ts';

// The second simulator compared with what can be worked out by hand, before anything is compared with it.

/** A glider of 6:1 in still air of constant density, except for what is changed. */
function still(changes: Partial<World> = {}): World {
  return {
    thinness: () => 1,
    thinning: () => 0,
    wind: blowing({}),
    kinks: [],
    glide: { speed: 20, ratio: 6 },
    steep: undefined,
    stall: 14,
    approach: 22,
    touchdown: 16,
    span: 10,
    wingAboveWheels: 2,
    roundOutHeight: 5,
    rollRate: 0.4,
    bank: 0.5,
    bankLimit: 1,
    side: 1,
    spacing: 500,
    leastFinal: 91.44,
    speedHeldDownTo: 0,
    ...changes,
  };
}

/** A wind that carries along and across, growing steadily with height. */
const blowing =
  ({ along = 0, across = 0, alongPerMetre = 0, acrossPerMetre = 0 }: Partial<Wind>): World['wind'] =>
  (height, out) => {
    out.along = along + alongPerMetre * height;
    out.across = across + acrossPerMetre * height;
    out.alongPerMetre = alongPerMetre;
    out.acrossPerMetre = acrossPerMetre;
  };

const degrees = (angle: number) => (angle * Math.PI) / 180;

describe('the polar', () => {
  it('has its best ratio at its best speed, and solves the implicit equation at any other, banked too', () => {
    const polar = { speed: 20, ratio: 6 };
    expect(sinGlide(polar, 20, 0)).toBeCloseTo(Math.sin(Math.atan(1 / 6)), 12);
    for (const eas of [16, 20, 31]) {
      for (const bank of [0, 0.6, 1]) {
        let gamma = 0.2;
        for (let i = 0; i < 200; i++) gamma = Math.asin(drag(polar, eas, Math.cos(gamma) / Math.cos(bank)));
        expect(sinGlide(polar, eas, bank)).toBeCloseTo(Math.sin(gamma), 12);
      }
    }
    expect(sinGlide(polar, 19, 0)).toBeGreaterThan(sinGlide(polar, 20, 0));
    expect(sinGlide(polar, 21, 0)).toBeGreaterThan(sinGlide(polar, 20, 0));
  });

  it('goes through the published values of ground effect', () => {
    expect(inducedLeft(0.1)).toBeCloseTo(1 - 0.476, 12);
    expect(inducedLeft(0.25)).toBeCloseTo(1 - 0.235, 12);
    expect(inducedLeft(1)).toBeCloseTo(1 - 0.014, 12);
  });

  it('is flown faster against a wind, and at best glide without', () => {
    const polar = { speed: 20, ratio: 6 };
    expect(farthestSpeed(polar, 0, 1)).toBeCloseTo(20, 4);
    const into = farthestSpeed(polar, 8, 1);
    const over = (eas: number) => {
      const sin = sinGlide(polar, eas, 0);
      return (eas * Math.sqrt(1 - sin * sin) - 8) / (eas * sin);
    };
    expect(over(into)).toBeGreaterThan(over(into + 0.05));
    expect(over(into)).toBeGreaterThan(over(into - 0.05));
    expect(into).toBeGreaterThan(21);
  });
});

describe('straight flight', () => {
  it('glides ratio times its height in still air', () => {
    const { state, time } = new Flight(still()).begin(0, 0, 300, 0).line('final', 0, untilHeight(0));
    expect(state[X]).toBeCloseTo(1800, 6);
    expect(time).toBeCloseTo(300 / (20 * Math.sin(Math.atan(1 / 6))), 6);
  });

  it('holds its track across a uniform wind, and takes the time of the wind triangle', () => {
    const world = still({ wind: blowing({ along: 3, across: -5 }) });
    const track = degrees(-90);
    const flight = new Flight(world).begin(0, 900, 400, track).line('base', track, untilAcross(100, -1));
    const level = 20 * Math.cos(Math.atan(1 / 6));
    expect(flight.state[X]).toBeCloseTo(0, 9);
    // Along the track (to the left) the wind helps by 5; 3 across it is crabbed away.
    expect(flight.time).toBeCloseTo(800 / (Math.sqrt(level ** 2 - 9) + 5), 6);
    expect(flight.state[PSI]).toBeCloseTo(track - Math.asin(3 / level), 9);
  });

  it('pays for a wind that falls off, V dW/g of height, and is paid for a growing one', () => {
    for (const alongPerMetre of [-0.03, 0.03]) {
      const world = still({ wind: blowing({ alongPerMetre }) });
      const flight = new Flight(world).begin(0, 0, 300, 0).line('final', 0, untilHeight(100));
      const gamma = Math.atan(1 / 6);
      const level = 20 * Math.cos(gamma);
      const step = -200 * alongPerMetre;
      expect(flight.time * 20 * Math.sin(gamma)).toBeCloseTo(200 - (level * step) / g, 6);
      // A headwind that falls off on the way down is a loss: less time in the air.
      expect(flight.time < 200 / (20 * Math.sin(gamma))).toBe(alongPerMetre < 0);
    }
  });

  it('pays only for the part of the change along the air velocity', () => {
    const world = still({ wind: blowing({ across: 2, acrossPerMetre: 0.02 }) });
    const flight = new Flight(world).begin(0, 0, 101, 0).line('final', 0, untilHeight(100));
    const gamma = Math.atan(1 / 6);
    const into = 2 + 0.02 * 100.5;
    // The nose is laid off into the wind: V_h . dW/dh = -W dW/dh.
    expect(flight.time * 20 * Math.sin(gamma)).toBeCloseTo(1 - (into * 0.02) / g, 6);
  });

  it('is given the energy of the thickening air', () => {
    const air = thinnessOf(500, 300, 100_000);
    const flight = new Flight(still(air)).begin(0, 0, 900, 0).line('final', 0, untilHeight(0));
    const kinetic = (height: number) => (20 * air.thinness(height)) ** 2 / (2 * g);
    expect(flight.state[X]! / 6).toBeCloseTo(900 + kinetic(900) - kinetic(0), 5);
  });

  it('gains and loses speed by the energy that it takes', () => {
    for (const eas of [26, 17]) {
      let work = 0;
      let last = 0;
      const polar = { speed: 20, ratio: 6 };
      const seen = (state: State, time: number) => {
        work += (time - last) * state[EAS]! * sinGlide(polar, state[EAS]!, 0);
        last = time;
      };
      const flight = new Flight(still(), 0.001, seen).begin(0, 0, 300, 0);
      flight.line('final', 0, untilAlong(700, 1), eas);
      expect(flight.state[EAS]).toBe(eas);
      expect(flight.state[H]! + (eas ** 2 - 400) / (2 * g)).toBeCloseTo(300 - work, 1);
    }
  });

  it('changes half a metre a second in a second, and slows no faster than half the sink allows', () => {
    const at = (ratio: number, eas: number) => {
      const flight = new Flight(still({ glide: { speed: 20, ratio } })).begin(0, 0, 300, 0);
      return flight.line('final', 0, untilAlong(20, 1), eas);
    };
    const seconds = (flight: Flight) => flight.time;
    expect(at(6, 30).state[EAS]).toBeCloseTo(20 + 0.5 * seconds(at(6, 30)), 6);
    expect(at(6, 10).state[EAS]).toBeCloseTo(20 - 0.5 * seconds(at(6, 10)), 6);
    const flat = at(15, 10);
    expect(flat.state[EAS]! / (20 - (g / 2) * Math.sin(Math.atan(1 / 15)) * flat.time)).toBeCloseTo(1, 3);
  });
});

describe('turning', () => {
  it('goes round V^2 cos(gamma)/(g tan(bank)) at V tan(bank) g, and sinks as the banked polar says', () => {
    const world = still();
    const flight = new Flight(world).begin(0, 0, 500, 0);
    flight.state[BANK] = 0.5;
    flight.turn('base-turn', Math.PI, 1, 0.5, false);
    const sin = sinGlide(world.glide, 20, 0.5);
    const radius = (400 * Math.sqrt(1 - sin * sin)) / (g * Math.tan(0.5));
    expect(flight.state[Y]).toBeCloseTo(2 * radius, 4);
    expect(flight.state[X]).toBeCloseTo(0, 4);
    expect(flight.time).toBeCloseTo((Math.PI * 20) / (g * Math.tan(0.5)), 6);
    expect(500 - flight.state[H]!).toBeCloseTo(flight.time * 20 * sin, 6);
  });

  it('drifts with the wind', () => {
    const turned = (wind: World['wind']) => {
      const flight = new Flight(still({ wind })).begin(0, 0, 500, 0);
      flight.state[PSI] = 0;
      flight.state[BANK] = 0.5;
      const left = { seconds: 0 };
      flight.turn('base-turn', 4 * Math.PI, 1, 0.5, false);
      left.seconds = flight.time;
      return { along: flight.state[X]!, across: flight.state[Y]!, seconds: left.seconds };
    };
    const calm = turned(blowing({}));
    const carried = turned(blowing({ along: 4 }));
    expect(carried.along - calm.along).toBeCloseTo(4 * carried.seconds, 5);
    expect(carried.across).toBeCloseTo(calm.across, 5);
  });

  it('rolls out, wings level, on the heading that holds the track, as a mirror image to the other side', () => {
    const wind = blowing({ along: -4, across: 3 });
    const flight = new Flight(still({ wind })).begin(0, 500, 300, degrees(-90));
    flight.turn('final-turn', 0, 1, 0.5);
    const level = 20 * Math.cos(Math.atan(1 / 6));
    expect(flight.state[BANK]).toBe(0);
    expect(flight.state[PSI]).toBeCloseTo(-Math.asin(3 / level), 6);
    const mirrored = new Flight(still({ wind: blowing({ along: -4, across: -3 }) }));
    mirrored.begin(0, -500, 300, degrees(90)).turn('final-turn', 0, -1, 0.5);
    expect(mirrored.state[Y]).toBeCloseTo(-flight.state[Y]!, 8);
    expect(mirrored.state[H]).toBeCloseTo(flight.state[H]!, 8);
  });

  it('pays for the wind in which it turns: V . dW/g all round', () => {
    // Half a turn from upwind to downwind through a wind that falls off: lost on the first quarter, regained on the
    // last.
    const world = still({ wind: blowing({ alongPerMetre: -0.02 }) });
    let [work, paid, last] = [0, 0, { height: 500, time: 0 }];
    const flight = new Flight(world, 0.002, (state, time) => {
      work += (time - last.time) * 20 * sinGlide(world.glide, 20, state[BANK]!);
      const sin = sinGlide(world.glide, 20, state[BANK]!);
      paid += ((state[H]! - last.height) * -0.02 * 20 * Math.sqrt(1 - sin * sin) * Math.cos(state[PSI]!)) / g;
      last = { height: state[H]!, time };
    }).begin(0, 0, 500, 0);
    flight.turn('base-turn', degrees(170), 1, 0.6);
    expect(Math.abs(paid)).toBeGreaterThan(0.01);
    expect(500 - flight.state[H]!).toBeCloseTo(work + paid, 2);
  });

  it('holds a circle on the ground with the bank that turns the heading as it must', () => {
    const world = still({ wind: blowing({ along: 5 }) });
    const seen: { time: number; heading: number; bank: number; off: number }[] = [];
    const flight = new Flight(world, 0.05, (state, time) => {
      const off = Math.hypot(state[X]!, state[Y]! - 150) - 150;
      seen.push({ time, heading: state[PSI]!, bank: state[BANK]!, off });
    }).begin(0, 0, 800, 0);
    flight.circle('circle', 150, 1, 0, 2 * Math.PI);
    expect(flight.state[X]).toBeCloseTo(0, 3);
    expect(Math.max(...seen.map(({ off }) => Math.abs(off)))).toBeLessThan(1e-3);
    for (let i = 2; i < seen.length - 2; i += 7) {
      const [before, now, after] = [seen[i - 1]!, seen[i]!, seen[i + 1]!];
      const rate = (after.heading - before.heading) / (after.time - before.time);
      expect(rate).toBeCloseTo((g * Math.tan(now.bank)) / 20, 4);
    }
    // Steepest with the wind behind, at the start; shallowest against it.
    expect(seen[0]!.bank).toBeGreaterThan(seen[Math.floor(seen.length / 2)]!.bank + 0.1);
  });
});

describe('the landing', () => {
  const landing = (changes: Partial<World> = {}) => {
    const world = still(changes);
    const phases: { phase: string; state: State; time: number }[] = [];
    const flight = new Flight(world, 0.001, (state, time, phase) =>
      phases.push({ phase, state: state.slice(), time }),
    );
    flight.begin(0, 0, 5, 0, 22).land(1.3);
    return { flight, phases, world };
  };

  it('ends on the ground at the touchdown speed, on the centreline', () => {
    const { flight } = landing();
    expect(flight.failed).toBeUndefined();
    expect(flight.state[H]).toBeCloseTo(0, 6);
    expect(flight.state[EAS]).toBeCloseTo(16, 8);
    expect(flight.state[Y]).toBe(0);
  });

  it('spends energy on nothing but drag and the wind that falls off', () => {
    for (const alongPerMetre of [0, -0.2]) {
      const { phases, world } = landing({ wind: blowing({ along: -3, alongPerMetre }) });
      let spent = 0;
      for (let i = 1; i < phases.length; i++) {
        const [a, b] = [phases[i - 1]!, phases[i]!];
        const [eas, height] = [a.state[EAS]!, a.state[H]!];
        const load = a.phase === 'round-out' ? 1.3 : 1;
        spent += (b.time - a.time) * eas * drag(world.glide, eas, load, inducedLeft((height + 2) / 10));
        spent += ((b.state[H]! - height) * alongPerMetre * eas * Math.cos(a.state[6]!)) / g;
      }
      const [first, last] = [phases[0]!.state, phases.at(-1)!.state];
      const energy = (state: State) => state[H]! + state[EAS]! ** 2 / (2 * g);
      expect(energy(first) - energy(last)).toBeCloseTo(spent, 2);
    }
  });

  it('pulls round an arc of V^2/(g (n - 1)), about', () => {
    const { phases } = landing();
    const [begun, level] = [phases[0]!, phases.findLast(({ phase }) => phase === 'round-out')!];
    const gamma = Math.asin(sinGlide({ speed: 20, ratio: 6 }, 22, 0));
    const mean = (22 + level.state[EAS]!) / 2;
    const radius = mean ** 2 / (g * 0.3);
    expect((begun.state[H]! - level.state[H]!) / (radius * (1 - Math.cos(gamma)))).toBeCloseTo(1, 1);
  });

  it('says so where the ground comes first', () => {
    const flight = new Flight(still()).begin(0, 0, 0.5, 0, 22).land(1.05);
    expect(flight.failed).toMatch(/ground/);
  });
});
