import { qnhOf } from '../../flight/air/air.ts';
import { flownVeer } from '../../flight/air/flown-wind.ts';
import { indicatedSpeed } from '../../flight/aircraft/calibration.ts';
import type { Plan, WindProfileKind } from '../../flight/terms/plan.ts';
import { formatAngle, formatDirection } from '../../units/angle-text.ts';
import { classNames } from '../../words/aircraft/class-names.ts';
import { approachNames } from '../../words/approaches/approach-names.ts';
import {
  formatDensityAltitude,
  formatHeight,
  formatMass,
  formatPressure,
  formatRatio,
  formatSpeed,
  formatTemperature,
  formatWind,
} from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { veerWords } from '../../words/winds/veer-words.ts';

/** One line of the block that says what the packet is computed for. */
export interface SettingEntry {
  readonly label: string;
  readonly value: string;
  readonly detail: string;
}

const profileNames: Readonly<Record<WindProfileKind, string>> = {
  power: 'stronger with height, by the power law',
  uniform: 'taken the same at every height',
  layers: 'as given for each height',
};

/** How the wind of a plan changes with height: stronger, and turning where it does. */
export function profileWords(plan: Plan, units: PageUnits): string {
  const veer = flownVeer(plan);
  const turning = veer === 0 ? '' : `, turning ${veerWords(veer, units)}`;
  return `${profileNames[plan.flown.windProfile]}${turning}`;
}

/** What the packet is computed for, in figures: aircraft, place, wind, air, power setting, mass. */
export function settingOf(plan: Plan, units: PageUnits): SettingEntry[] {
  const { aircraft, airfield, runway, flown, air } = plan;
  const { glideSpeed, glideRatio, surfaceWind, gust } = flown;
  const gusts = gust === undefined ? '' : `, gusts ${formatSpeed(gust, units)}`;
  return [
    {
      label: 'Aircraft',
      value: aircraft.name,
      detail: `${classNames[aircraft.class]}${aircraft.seats === 1 ? ', one seat' : ''}`,
    },
    {
      label: 'Airfield',
      value: airfield.name,
      detail: `elevation ${formatHeight(airfield.elevation, units)}`,
    },
    {
      label: 'Runway and circuit',
      value: `${runway.name}, ${plan.circuit}-hand`,
      detail: headingText(runway.heading, airfield.variation),
    },
    {
      label: 'Approach',
      value: approachNames[plan.approach].full,
      detail: `planned bank ${formatAngle(flown.bank)}`,
    },
    {
      label: 'Power setting',
      value: plan.power === 'idle' ? 'Engine idling' : 'Engine stopped',
      detail: `best glide ${formatRatio(glideRatio)} at ${formatSpeed(indicatedSpeed(glideSpeed, aircraft), units)}`,
    },
    {
      label: 'Mass',
      value: formatMass(flown.mass),
      detail: `speeds given for ${formatMass(aircraft.mass.reference)}`,
    },
    {
      label: 'Wind at 10 m',
      value: formatWind(surfaceWind.from, surfaceWind.speed, units) + gusts,
      detail: surfaceWind.speed > 0 ? `${profileWords(plan, units)}; direction true` : 'at every height',
    },
    {
      label: 'Air at the field',
      value: `${formatTemperature(air.temperature)}, QNH ${formatPressure(qnhOf(air))}`,
      detail: `station pressure ${formatPressure(air.pressure)}`,
    },
    {
      label: 'Density altitude',
      value: formatDensityAltitude(air.densityAltitude, units),
      detail: 'dry air',
    },
  ];
}

/** Aircraft and wind in one line, for the running title. */
export function subjectLine(plan: Plan, units: PageUnits): string {
  const { from, speed } = plan.flown.surfaceWind;
  return `${plan.aircraft.name} · ${plan.airfield.name} ${plan.runway.name} · wind ${formatWind(from, speed, units)}`;
}

function headingText(heading: number, variation: number | undefined): string {
  const magnetic = variation === undefined ? '' : `, ${formatDirection(heading - variation)} magnetic`;
  return `landing on ${formatDirection(heading)} true${magnetic}`;
}
