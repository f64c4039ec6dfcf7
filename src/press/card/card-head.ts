import type { Element } from 'hast';
import { h } from 'hastscript';
import { crosswind, headwind } from '../../flight/air/wind.ts';
import { indicatedSpeed } from '../../flight/aircraft/calibration.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { approachNames } from '../../words/approaches/approach-names.ts';
import { formatSpeed, formatWind } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { crosswindWords, headwindWords } from '../../words/winds/wind-words.ts';
import { figure } from './card-figure.ts';

/** What the card is for: one look must tell it from the card for the other runway. */
export function cardHead(plan: Plan, units: PageUnits): Element {
  const { aircraft, airfield, runway, circuit, power } = plan;
  return h('header', [
    h('div', { class: 'title' }, [
      h('div', [
        h('h1', aircraft.name),
        h('p', `${approachNames[plan.approach].full}, engine ${power === 'idle' ? 'idling' : 'stopped'}`),
      ]),
      h('div', { class: 'runway' }, [
        h('p', { class: 'number' }, runway.name),
        h('p', [airfield.name, h('br'), `${circuit}-hand`]),
      ]),
    ]),
    h('p', { class: 'wind' }, windText(plan, units)),
    h(
      'dl',
      { class: 'speeds' },
      speeds(plan, units).map(([name, speed]) => h('div', [h('dt', name), h('dd', [figure(speed)])])),
    ),
  ]);
}

/** The wind, with its parts along the runway and across: the table by wind goes by these. */
function windText({ flown, runway }: Plan, units: PageUnits): (Element | string)[] {
  const { surfaceWind, gust } = flown;
  const wind = formatWind(surfaceWind.from, surfaceWind.speed, units);
  const along = headwindWords(headwind(surfaceWind, runway.heading), units);
  const across = crosswindWords(crosswind(surfaceWind, runway.heading), units);
  const parts = [
    ...(along === 'none' ? [] : [along]),
    ...(across === 'none' ? [] : [across]),
    ...(gust === undefined ? [] : [`gusts ${formatSpeed(gust, units)}`]),
  ];
  const rest = parts.length === 0 ? '' : `: ${parts.join(', ')}`;
  return ['Wind ', h('b', wind), wind === 'calm' ? '' : ' (true)', rest];
}

/** Indicated, at the mass flown. */
function speeds({ aircraft, flown }: Plan, units: PageUnits): readonly (readonly [string, string])[] {
  const shown = (equivalent: number) => formatSpeed(indicatedSpeed(equivalent, aircraft), units);
  const { glide, approach, touchdown, stall } = aircraft.flap ?? {};
  // Where all are flown with the same flap, there is nothing to tell apart.
  const differs = new Set([glide, approach, touchdown, stall]).size > 1;
  const named = (name: string, flap: string | undefined) =>
    flap === undefined || !differs ? name : `${name}, flap ${flap}`;
  return [
    [named('Best glide', glide), shown(flown.glideSpeed)],
    [named('Approach', approach), shown(flown.approachSpeed)],
    [named('Touchdown', touchdown), shown(flown.touchdownSpeed)],
    [named('Stall', stall), shown(flown.stallSpeed)],
  ];
}
