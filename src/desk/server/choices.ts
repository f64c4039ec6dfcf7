import type { Choices } from '../../press/packet/scenario.ts';
import { QuantityError } from '../../units/quantity.ts';
import { parseWind } from '../../units/wind-text.ts';
import type { DeskMessage, PageChoices } from '../api.ts';
import { choiceMessage } from './desk-messages.ts';

/** Choices as they were typed, for the press; with a message where the wind is not a wind. */
export function readChoices({ airfield, runway, wind, power }: Omit<PageChoices, 'edition'>): {
  readonly choices: Choices;
  readonly messages: readonly DeskMessage[];
} {
  const choices = { airfield, runway, power };
  if (wind === undefined) return { choices, messages: [] };
  try {
    return { choices: { ...choices, wind: parseWind(wind) }, messages: [] };
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    return { choices, messages: [choiceMessage('wind', error.message)] };
  }
}
