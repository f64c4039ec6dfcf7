import type { Plan } from '../../flight/terms/plan.ts';
import { formatDistance, formatHeight } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { simplified } from '../kit/geometry.ts';
import { dash, face, faint, ink, size, tint, weight } from '../kit/ink.ts';
import { drawLine, drawMark, drawPolyline } from '../kit/marks.ts';
import { layer, mm, type Sheet } from '../kit/sheet.ts';
import { setLine, wrapped } from '../kit/text.ts';
import { drawLabel } from '../labels/labels.ts';
import { drawFaults } from '../shared/drawn-fault.ts';
import { stretches } from '../shared/track-line.ts';
import type { Bar, ProfileLayout } from './profile-layout.ts';
import { foot, profilePoint } from './profile-view.ts';
import { profileNote } from './profile-words.ts';

/** Draws what `layOutProfile` has placed. */
export function drawProfile(sheet: Sheet, plan: Plan, units: PageUnits, layout: ProfileLayout): void {
  const { view } = layout;
  drawAxes(sheet, units, layout);
  drawFoot(sheet, plan, units, layout);
  const scene = layer(sheet, 'heights');
  for (const bar of layout.bars) drawBar(scene, bar);
  drawLine(scene, layout.limit, { width: weight.line, dashes: dash.limit });
  for (const box of layout.obstacles) {
    scene
      .rect(box.width, box.height)
      .attr({ x: mm(box.x), y: mm(box.y), fill: faint, stroke: ink, 'stroke-width': weight.line });
  }
  if (layout.sight) drawLine(scene, layout.sight, { width: weight.line, dashes: dash.sight });
  if (layout.faults.length > 0) drawFaults(layer(sheet, 'faults'), layout.faults);
  const track = layer(sheet, 'track');
  const xOf = new Map(plan.track.map((sample, index) => [sample, view.toGo[index]!]));
  const place = (sample: Plan['track'][number]) => profilePoint(view, xOf.get(sample)!, sample.height);
  for (const { turning, points } of stretches(plan.track, place)) {
    drawPolyline(track, simplified(points, 0.015), { width: turning ? weight.turn : weight.straight });
  }
  const marks = layer(sheet, 'marks');
  for (const mark of layout.marks) drawMark(marks, mark);
  const labels = layer(sheet, 'labels');
  for (const label of layout.labels) drawLabel(labels, label);
}

function drawBar(into: ReturnType<typeof layer>, { box, closedAbove, closedBelow }: Bar): void {
  into.rect(box.width, box.height).attr({ x: mm(box.x), y: mm(box.y), fill: tint });
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  for (const x of [box.x, right])
    drawLine(into, { from: { x, y: box.y }, to: { x, y: bottom } }, { width: weight.line });
  const cap = (y: number) =>
    drawLine(into, { from: { x: box.x - 0.5, y }, to: { x: right + 0.5, y } }, { width: 0.5 });
  if (closedAbove) cap(box.y);
  if (closedBelow) cap(bottom);
}

/** mm under the ground at which the numbers of the distance axis begin, usually and where a square is on the ground. */
const numbersUnder = { usual: 2, square: 2.8 };

function drawAxes(sheet: Sheet, units: PageUnits, { view, marks }: ProfileLayout): void {
  const axes = layer(sheet, 'axes');
  const { plot } = view;
  const ground = plot.y + plot.height;
  const onGround = marks.some(({ at, grade }) => grade && ground - at.y < numbersUnder.usual);
  const under = onGround ? numbersUnder.square : numbersUnder.usual;
  drawLine(
    axes,
    { from: { x: plot.x, y: plot.y - 2 }, to: { x: plot.x, y: ground } },
    { width: weight.line },
  );
  drawLine(
    axes,
    { from: { x: plot.x, y: ground }, to: { x: plot.x + plot.width, y: ground } },
    { width: weight.outline },
  );
  for (const height of view.heightTicks) {
    const { y } = profilePoint(view, 0, height);
    drawLine(axes, { from: { x: plot.x - 1.2, y }, to: { x: plot.x, y } }, { width: weight.line });
    const at = { x: plot.x - 1.8, y: y + (size.small * face.cap) / 2 };
    setLine(axes, { text: formatHeight(height, units) }, at, { align: 'end', size: size.small });
  }
  for (const distance of view.distanceTicks) {
    const { x } = profilePoint(view, distance, 0);
    drawLine(axes, { from: { x, y: ground }, to: { x, y: ground + 1.2 } }, { width: weight.line });
    const at = { x, y: ground + under + size.small * face.cap };
    const past = distance < 0 ? ' past' : '';
    const text = `${formatDistance(Math.abs(distance), units)}${past}`;
    setLine(axes, { text }, at, { align: 'middle', size: size.small });
  }
}

function drawFoot(sheet: Sheet, plan: Plan, units: PageUnits, { view, phases, faults }: ProfileLayout): void {
  const group = layer(sheet, 'phases');
  const top = view.plot.y + view.plot.height + foot.numbers + 0.9;
  const baseline = (row: number) => top + foot.bracket + size.small * face.cap - 0.6 + row * foot.row;
  for (const { text, from, to, at, row, leader } of phases) {
    drawLine(
      group,
      { from: { x: from + 0.25, y: top }, to: { x: Math.max(to - 0.25, from + 0.5), y: top } },
      { width: 0.5 },
    );
    if (leader !== undefined) {
      const x = leader;
      drawLine(
        group,
        { from: { x, y: top }, to: { x, y: baseline(row) - size.small * face.cap - 0.5 } },
        { width: weight.hair },
      );
    }
    if (text !== '')
      setLine(group, { text }, { x: at, y: baseline(row) }, { align: 'middle', size: size.small });
  }
  const drawn = faults.map(({ fault }) => fault);
  const note = profileNoteLines(sheet, profileNote(plan, units, view.exaggeration, drawn));
  for (const [index, text] of note.entries()) {
    const y = sheet.height - 1.2 - (note.length - 1 - index) * size.note * face.leading;
    setLine(group, { text }, { x: 2, y }, { size: size.note });
  }
}

/** The note under the drawing, in lines. */
export function profileNoteLines({ board, width }: Pick<Sheet, 'board' | 'width'>, note: string): string[] {
  return wrapped(board, note, width - 4, size.note);
}
