import type { Plan } from '../../flight/terms/plan.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { Drawing, DrawingBoard, DrawingOptions } from '../kit/drawing.ts';
import { face, size } from '../kit/ink.ts';
import { closeSheet, layer, mmPerPixel, openSheet, wholePixels } from '../kit/sheet.ts';
import { setBlock, setLine, type TextLine, wrapped } from '../kit/text.ts';
import { drawPanel, type Picture, sky } from './final-sight-panel.ts';
import { type Sight, seen, seenRunway, sightsOf } from './final-sight-view.ts';
import {
  angleWords,
  heightWords,
  meaning,
  sightDescription,
  sightNames,
  sightNote,
  sightTitle,
} from './final-sight-words.ts';

/** Room: at least 120 by 80 mm. */
export type FinalSightOptions = DrawingOptions;

export interface FinalSightDrawing extends Drawing {
  /**
   * mm: the distance at which the picture looks as large as the runway from the air; tangents multiplied by it are
   * its measures.
   */
  readonly focus: number;
  readonly sights: readonly Sight[];
}

/** mm: the largest that fits is taken. */
const focuses = [400, 350, 300, 250, 200, 180, 160, 140, 120, 110, 100, 90, 80, 70, 60, 50, 40, 30];
/** mm. */
const between = 3;
const edge = 0.3;
const belowRunway = 4;
const headline = 5;
/** To the left of the runway: the angle's dimension line and its figure. */
const leastBeside = 13;
/**
 * Tangents below the horizon at which a runway is cut off: nobody looks down over the nose more steeply than the
 * first. The others are for a runway so near that it would fill the picture.
 */
const steepests = [0.6, 0.45, 0.35, 0.25, 0.18];

/**
 * The runway as seen on final, low, right and high at the same distance, in true perspective at one angular scale.
 * @throws RangeError where the plan has no final leg towards an aim point, or there is no room.
 */
export function finalSightDrawing(plan: Plan, options: FinalSightOptions): FinalSightDrawing {
  const { board, id, units } = options;
  const sights = sightsOf(plan);
  if (!sights) throw new RangeError('A plan without a final leg towards an aim point has no view of it');
  const width = wholePixels(options.maxWidth);
  const panelWidth = (width - 2 * between - 2 * edge) / 3;
  const captions = sights.map((sight) => captionLines(board, sight, units, panelWidth));
  const captionHeight = Math.max(...captions.map((lines) => lines.length)) * size.small * face.leading + 1.5;
  const noteOf = (picture: { focus: number; cutOff: boolean }) =>
    wrapped(board, sightNote(plan, sights[1]!, units, picture), width - 4, size.note);
  const noteHeight = noteOf({ focus: 100, cutOff: true }).length * size.note * face.leading + 2;
  const frame = headline + captionHeight + noteHeight + 2;
  const picture = pictureFor(plan, sights, panelWidth, options.maxHeight - frame);
  if (picture === undefined) {
    throw new RangeError(
      `There is no room for three views in ${Math.round(width)} mm by ${Math.round(options.maxHeight)} mm`,
    );
  }
  const { focus } = picture;
  const panelHeight = needs(plan, sights, picture).tall;
  const height = Math.ceil((frame + panelHeight) / mmPerPixel - 1e-6) * mmPerPixel;
  const sheet = openSheet(board, id, width, height);
  for (const [index, sight] of sights.entries()) {
    const box = {
      x: edge + index * (panelWidth + between),
      y: headline,
      width: panelWidth,
      height: panelHeight,
    };
    drawPanel(sheet, plan, { sight, box }, picture);
    const words = layer(sheet, `words-${sight.id}`);
    const name = { text: `${sightNames[sight.id]}: ${heightWords(sight, units)}`, bold: true };
    setLine(words, name, { x: box.x, y: headline - 1.5 });
    const under = { x: box.x, y: box.y + box.height + 1.5, width: box.width, height: captionHeight };
    setBlock(words, captions[index]!, under, { size: size.small });
  }
  const note = layer(sheet, 'note');
  const lines = noteOf(picture);
  for (const [index, text] of lines.entries()) {
    const y = height - 1.2 - (lines.length - 1 - index) * size.note * face.leading;
    setLine(note, { text }, { x: 0, y }, { size: size.note });
  }
  const description = sightDescription(plan, sights, units, picture);
  return { ...closeSheet(sheet, sightTitle(plan), description), focus, sights };
}

function captionLines(board: DrawingBoard, sight: Sight, units: PageUnits, width: number): TextLine[] {
  const angle = `${angleWords(sight).replace(/^a/, 'A')}.`;
  return [angle, meaning(sight, units)].flatMap((text) =>
    wrapped(board, text, width - 1, size.small).map((line) => ({ text: line })),
  );
}

/** mm: rather than use a smaller focus than this, a runway is cut off higher up. */
const fairFocus = 60;

/** The largest picture that fits into a panel, with as much of the runway as possible. */
function pictureFor(
  plan: Plan,
  sights: readonly Sight[],
  width: number,
  height: number,
): Picture | undefined {
  const path = Math.tan(sights[1]!.depression);
  for (const least of [fairFocus, 0]) {
    for (const steepest of steepests) {
      const lowest = lowestSeen(plan, sights, steepest);
      const cutOff = sights.some(({ eye }) => !seenRunway(plan, eye, lowest).wholeNear);
      const focus = focuses.find((each) => {
        const { tall, wide } = needs(plan, sights, { focus: each, lowest });
        return each >= least && wide <= width && tall <= height;
      });
      if (focus !== undefined) return { focus, lowest, cutOff, path };
    }
  }
  return undefined;
}

/** The size of a panel that holds every view, mm. */
function needs(plan: Plan, sights: readonly Sight[], { focus, lowest }: Pick<Picture, 'focus' | 'lowest'>) {
  const halves = sights.map(({ eye }) => {
    const { near } = seenRunway(plan, eye, lowest);
    return seen({ along: near, across: plan.runway.width / 2 }, eye).right * focus;
  });
  return {
    tall: sky + lowest * focus + belowRunway,
    wide: 2 * (Math.max(...halves) + leastBeside),
  };
}

/**
 * The tangent below the horizon that the pictures reach down to: the near end of the runway, or as far down as one
 * looks; always below the aim point, which may be before the runway.
 */
function lowestSeen(plan: Plan, sights: readonly Sight[], steepest: number): number {
  const ofRunway = sights.map(({ eye }) => {
    const ahead = -plan.runway.spot - eye.along;
    return ahead > 0 ? eye.height / ahead : steepest;
  });
  const ofAim = sights.map(({ depression }) => Math.tan(depression) * 1.06);
  return Math.max(Math.min(steepest, Math.max(...ofRunway)), ...ofAim);
}
