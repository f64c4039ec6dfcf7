import { baseKeyHeight } from './base-key-height.ts';
import { baseTurnInWind } from './base-turn-in-wind.ts';
import { finalOffHeight } from './final-off-height.ts';
import { gateReading } from './gate-reading.ts';
import { glideIntoWind } from './glide-into-wind.ts';
import { heightLostInTurn } from './height-lost-in-turn.ts';
import type { Draw } from './question-setting.ts';
import { stallInBank } from './stall-in-bank.ts';
import { whichField } from './which-field.ts';

interface Kind {
  readonly draw: Draw;
  /** Draws before this kind is given up for the flight. */
  readonly tries: number;
}

/** Every kind of question, by name. One that flies to every field takes too long to be tried often. */
export const kinds: Readonly<Record<string, Kind>> = {
  'base-turn-in-wind': { draw: baseTurnInWind, tries: 12 },
  'base-key-height': { draw: baseKeyHeight, tries: 12 },
  'gate-reading': { draw: gateReading, tries: 12 },
  'final-off-height': { draw: finalOffHeight, tries: 12 },
  'which-field': { draw: whichField, tries: 3 },
  'stall-in-bank': { draw: stallInBank, tries: 12 },
  'height-lost-in-turn': { draw: heightLostInTurn, tries: 12 },
  'glide-into-wind': { draw: glideIntoWind, tries: 12 },
};
