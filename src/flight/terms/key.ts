/** The key positions of an approach, in the order in which they are flown. */
export type KeyId =
  | 'overhead'
  | 'downwind-key'
  | 'base-turn'
  | 'base-key'
  | 'final-turn'
  | 'final'
  | 'aim-point'
  | 'touchdown';
