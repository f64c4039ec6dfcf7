import { indicatedSpeed } from '../../flight/aircraft/calibration.ts';
import { formatAngle, formatDirection } from '../../units/angle-text.ts';
import { formatDistance, formatHeight, formatSpeed, formatWind } from '../../words/figures/format.ts';
import { lowerFirst } from '../../words/figures/letter-case.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatSafeDistance } from '../../words/figures/safe-rounding.ts';
import { scaleText } from '../kit/scale-bar.ts';
import type { LegendWords } from '../pattern/pattern-legend.ts';
import { distanceToRing, isInside, reachedWords } from './reach-ground.ts';
import type { ReachScene } from './reach-scene.ts';

/** A distance on the outline, measured from where the glide begins. */
export interface ReachDistance {
  /** rad from the landing direction. */
  readonly direction: number;
  /** m. */
  readonly metres: number;
  readonly where: string;
}

/** Up wind and down wind; in a calm, ahead and back. */
export function reachDistances(scene: ReachScene, units: PageUnits): ReachDistance[] {
  const { aloft, plan, from, outline } = scene;
  const calm = formatWind(aloft.from, aloft.speed, units) === 'calm';
  const upWind = calm ? from.heading : aloft.from - plan.runway.heading;
  const ways = [
    { direction: upWind, where: calm ? 'ahead' : 'up wind' },
    { direction: upWind + Math.PI, where: calm ? 'back' : 'down wind' },
  ];
  return ways.flatMap(({ direction, where }) => {
    const metres = distanceToRing(from, direction, outline);
    return metres === undefined ? [] : [{ direction, metres, where }];
  });
}

/** Ground that there is to spend: rounded down to the page's step. */
export function reachText(metres: number, units: PageUnits): string {
  return formatSafeDistance(metres, 'down', units);
}

/** `the downwind key`. */
function startName({ label }: ReachScene): string {
  return `the ${lowerFirst(label)}`;
}

export function reachLegend(scene: ReachScene, units: PageUnits): LegendWords {
  const { plan, aloft, from, bank } = scene;
  const surface = formatWind(plan.flown.surfaceWind.from, plan.flown.surfaceWind.speed, units);
  const above = formatWind(aloft.from, aloft.speed, units);
  const speed = formatSpeed(indicatedSpeed(plan.flown.glideSpeed, plan.aircraft), units);
  const calm = surface === formatWind(0, 0, units);
  const wind = [
    `Wind ${surface}`,
    ...(above === surface ? [] : [`at ${formatHeight(from.height, units)}: ${above}`]),
  ];
  const note =
    `Shaded: the ground that the glide gets to from ${formatHeight(from.height, units)} at ${startName(scene)}, turned ` +
    `the shorter way at ${formatAngle(bank)} of bank, then straight on at ${speed}, the best-glide speed. ` +
    `At its edge no height is left for a pattern or for lining up${calm ? '' : ' into the wind'}. Dashed arrow: the heading at the start.`;
  return { wind, calm, note };
}

export function reachTitle({ label, plan }: ReachScene, scale: number): string {
  return `Ground that the glide of ${plan.aircraft.name} gets to from the ${label.toLowerCase()}, seen from above, ${scaleText(scale)}`;
}

/** The drawing for a reader who cannot see it. */
export function reachDescription(scene: ReachScene, units: PageUnits, scale: number): string {
  const { plan, from, fields, outline, elsewhere } = scene;
  const { wind, note } = reachLegend(scene, units);
  const spot = isInside({ along: 0, across: 0 }, outline) ? 'within reach' : 'out of reach';
  return [
    `Runway ${plan.runway.name}, landing ${formatDirection(plan.runway.heading)} true.`,
    `${wind.join(', ')}.`,
    `Scale ${scaleText(scale)}.`,
    note,
    ...reachDistances(scene, units).map(
      ({ metres, where }) => `From ${startName(scene)} it gets ${reachText(metres, units)} ${where}.`,
    ),
    `The spot of runway ${plan.runway.name} is ${spot}, ${placeText(from, { along: 0, across: 0 }, units)}.`,
    ...fields.map((field) => {
      const middle = centreOf(field.corners);
      return `Field ${field.name}: ${reachedWords[field.reached]}, ${placeText(from, middle, units)}.`;
    }),
    ...(elsewhere ? [elsewhere] : []),
  ].join(' ');
}

function centreOf(corners: ReachScene['outline']) {
  const sum = (part: 'along' | 'across') =>
    corners.reduce((total, corner) => total + corner[part], 0) / corners.length;
  return { along: sum('along'), across: sum('across') };
}

/** How far a place is from the start of the glide. */
function placeText(
  from: ReachScene['from'],
  to: { along: number; across: number },
  units: PageUnits,
): string {
  const metres = Math.hypot(to.along - from.along, to.across - from.across);
  return `${formatDistance(metres, units)} away`;
}
