import type { KeyId } from '../../flight/terms/key.ts';

/** What a key position is called on the page, at the start of a line. */
export const keyNames: Readonly<Record<KeyId, string>> = {
  overhead: 'Overhead',
  'downwind-key': 'Downwind key',
  'base-turn': 'Base turn',
  'base-key': 'Base key',
  'final-turn': 'Final turn',
  final: 'Final',
  'aim-point': 'Aim point',
  touchdown: 'Touchdown',
};
