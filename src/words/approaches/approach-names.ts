import type { Approach } from '../../flight/terms/approach.ts';

/** What an approach is called. */
interface ApproachNames {
  /** On drawings and captions: `180° approach`. */
  readonly title: string;
  /** In the setting of a packet: `180° power-off approach`. */
  readonly full: string;
  /** In a sentence in the terminal: `180-degree approach`. */
  readonly spoken: string;
  /** For the control that moves its start: `Height at the downwind key`. */
  readonly startHeight: string;
}

export const approachNames: Readonly<Record<Approach, ApproachNames>> = {
  '90': {
    title: '90° approach',
    full: '90° power-off approach',
    spoken: '90-degree approach',
    startHeight: 'Height at the base key',
  },
  '180': {
    title: '180° approach',
    full: '180° power-off approach',
    spoken: '180-degree approach',
    startHeight: 'Height at the downwind key',
  },
  '360': {
    title: '360° approach',
    full: '360° power-off approach',
    spoken: '360-degree approach',
    startHeight: 'Height over the spot',
  },
  spiral: {
    title: 'Spiral approach',
    full: 'Spiral and 180° approach',
    spoken: 'spiral approach',
    startHeight: 'Height at the top of the spiral',
  },
};
