import type { Plan } from '../../flight/terms/plan.ts';
import type { Drawing } from '../kit/drawing.ts';
import { closeSheet, mmPerPixel, openSheet, wholePixels } from '../kit/sheet.ts';
import { drawProfile, profileNoteLines } from './profile-draw.ts';
import { isInProfile } from './profile-fault-places.ts';
import { layOutProfile, type ProfileLayout } from './profile-layout.ts';
import { shownPart } from './profile-part.ts';
import { type ProfileOptions, profileView } from './profile-view.ts';
import { profileDescription, profileNote, profileTitle } from './profile-words.ts';

export interface ProfileDrawing extends Drawing {
  /** Heights are drawn this many times as large as distances. */
  readonly exaggeration: number;
}

/**
 * Height against distance to go along the flown track. The distance fills the width; heights are drawn as many times
 * larger as the room allows: a whole number, or a whole number and a half.
 * @throws RangeError where the plan has no track, a fault is not `isInProfile`, or the room is too low even for
 * heights drawn to the scale of distances.
 */
export function profileDrawing(plan: Plan, options: ProfileOptions): ProfileDrawing {
  const { board, id, units, faults = [] } = options;
  if (plan.track.length < 2) throw new RangeError('A plan without a flown track cannot be drawn');
  if (!faults.every((fault) => isInProfile(plan, fault))) {
    throw new RangeError('A fault that ends in the circles cannot be drawn');
  }
  const width = wholePixels(options.maxWidth);
  const whole = shownPart(plan);
  const crowded = bestLayout(whole, options);
  // Where the bars of the gates leave no room for a label, the label is left to the table of gates.
  const shown = crowded.hidden === 0 ? whole : { ...whole, gates: [] };
  const layout = crowded.hidden === 0 ? crowded : bestLayout(shown, options);
  const { view } = layout;
  const height = Math.ceil((view.plot.y + view.plot.height + view.foot) / mmPerPixel - 1e-6) * mmPerPixel;
  const sheet = openSheet(board, id, width, height);
  drawProfile(sheet, shown, units, layout);
  const description = profileDescription(plan, units, view, faults);
  const drawing = closeSheet(sheet, profileTitle(plan), description);
  return { ...drawing, exaggeration: view.exaggeration };
}

/** mm above the plot, tried in turn until every label has a free place. */
const headrooms = [0, 6, 12, 18, 24];

function bestLayout(plan: Plan, options: ProfileOptions): ProfileLayout {
  const { units, board, maxHeight, faults = [] } = options;
  const width = wholePixels(options.maxWidth);
  const notes = profileNoteLines({ board, width }, profileNote(plan, units, 10, faults)).length;
  let best: ProfileLayout | undefined;
  for (const headroom of headrooms) {
    const view = profileView(plan, options, notes, headroom);
    if (view === undefined) break;
    const layout = layOutProfile(plan, options, view);
    if (layout.hidden === 0) return layout;
    if (best === undefined || layout.hidden < best.hidden) best = layout;
  }
  if (best) return best;
  throw new RangeError(
    `There is no room for a profile in ${Math.round(width)} mm by ${Math.round(maxHeight)} mm`,
  );
}
