/**
 * Line weights (mm), greys and text sizes of every drawing. Black and white: weight, dash and label carry the
 * meaning. On white, `ink` has a contrast of 17:1, `faint` 6:1 (WCAG 2.2 asks for 3:1 in lines, 4.5:1 in text).
 */
export const ink = '#16181b';
export const faint = '#5c6168';
export const paper = '#ffffff';
/** For fills only; whatever they fill is outlined in `ink` or `faint`. */
export const tint = '#e3e5e8';

export const weight = {
  straight: 0.55,
  turn: 1.15,
  outline: 0.35,
  line: 0.25,
  hair: 0.18,
} as const;

export const dash = {
  centreline: '4 1 0.6 1',
  limit: '2 1.2',
  sight: '0.8 0.8',
} as const;

/** For the faults in one drawing, in their order: told apart by how long the dashes are. */
export const faultDashes = ['2.6 1.3', '1.4 1', '7 1.4', '4 1'] as const;

/** mm; 2.5 mm is 7.1 points. `note`: the lines under a drawing that say how to read it, 7.5 points. */
export const size = { label: 2.8, small: 2.5, note: 2.65, number: 3.6 } as const;

export const fontFamily = "'IBM Plex Sans', sans-serif";
/** For the drawing face, in ems: the height of its capitals, the depth of its descenders, the line spacing. */
export const face = { cap: 0.7, descent: 0.22, leading: 1.16 } as const;
