import type { Caution } from '../flight/terms/caution.ts';
import type { Plan } from '../flight/terms/plan.ts';
import { radiansPerDegree } from '../units/factors.ts';
import { cautionSentence } from '../words/cautions/caution-words.ts';
import { limitSource } from '../words/cautions/limit-sources.ts';
import { remedySentence } from '../words/cautions/remedy-words.ts';
import { aviation } from '../words/figures/aviation.ts';
import { keyNames } from '../words/keys/key-names.ts';

/** The plan contract: one object, SI units, angles in degrees; the sentences of its cautions in feet, metres and knots. */
export function planToJson(plan: Plan): Record<string, unknown> {
  const { aircraft, airfield, runway } = plan;
  return {
    format: 'chalkwing-plan/1',
    aircraft: {
      name: aircraft.name,
      class: aircraft.class,
      source: aircraft.source,
      mass: { ...aircraft.mass, flown: plan.flown.mass },
      wing: aircraft.wing,
      speeds: aircraft.speeds,
      glide: aircraft.glide,
      steepApproach: aircraft.steepApproach ?? null,
      turns: {
        bank: degrees(plan.flown.bank),
        limit: degrees(aircraft.turns.limit),
        rollRate: degrees(aircraft.turns.rollRate),
      },
      roundOut: aircraft.roundOut,
      landingRoll: aircraft.landingRoll,
      limits: aircraft.limits,
    },
    airfield: {
      name: airfield.name,
      source: airfield.source,
      elevation: airfield.elevation,
      variation: airfield.variation === undefined ? null : degrees(airfield.variation),
      windExponent: airfield.windExponent,
      ...(airfield.windVeer && { windVeer: degrees(airfield.windVeer) }),
      pattern: { height: plan.flown.height, spacing: plan.flown.spacing },
    },
    runway: { ...runway, heading: degrees(runway.heading) },
    air: plan.air,
    wind: plan.wind.map(({ height, from, speed }) => ({ height, from: degrees(from), speed })),
    approach: plan.approach,
    power: plan.power,
    circuit: plan.circuit,
    solved: {
      name: plan.solved.name,
      value: plan.solved.unit === 'deg' ? degrees(plan.solved.value) : plan.solved.value,
      unit: plan.solved.unit,
    },
    track: plan.track.map((sample) => ({
      ...sample,
      heading: degrees(sample.heading),
      bank: degrees(sample.bank),
    })),
    keys: plan.keys.map(({ id, ...key }) => ({ id, label: keyNames[id], ...key })),
    gates: plan.gates,
    touchdown: plan.touchdown,
    cautions: plan.cautions.map((caution) => cautionJson(caution, plan)),
    grade: plan.grade,
    made: plan.made,
  };
}

/** A caution in the contract: its sentence in the units of the trade, its figures in SI units. */
function cautionJson(caution: Caution, plan: Plan) {
  const { code, value, limit, grade, at } = caution;
  const remedy = remedySentence(caution, plan, aviation);
  return {
    code,
    message: cautionSentence(caution, plan, aviation),
    value,
    limit,
    source: limitSource(caution, plan, aviation),
    grade,
    ...(at && { at }),
    ...(remedy && { remedy }),
  };
}

function degrees(angle: number): number {
  return angle / radiansPerDegree;
}
