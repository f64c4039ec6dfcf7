/**
 * The approaches by their ids. Each is defined in a file of its own in `flight/approaches`, and named in
 * `words/approaches`; a missing one is a type error.
 */
export const approachIds = ['90', '180', '360', 'spiral'] as const;

export type Approach = (typeof approachIds)[number];

/** What can be asked of one approach only, under its id; what is left out is found. */
export interface ApproachOptions {
  readonly '90'?: {
    /** m from the spot to the base leg. */
    readonly baseDistance?: number | undefined;
  };
  readonly spiral?: {
    /** Whole circles. Default: as many shallow ones as the height allows. */
    readonly circles?: number | undefined;
    /** The circles drift with the wind; otherwise they are held on the ground. */
    readonly drift?: boolean | undefined;
  };
}

/** An option that fixes the start, as the start height does. */
export type HeightOption = 'baseDistance';

/** The numbers that an approach may leave open, for its method to find. */
export type SolvedName =
  | 'past-abeam'
  | 'throttle-height'
  | 'base-distance'
  | 'circle-radius'
  | 'circle-bank'
  | 'start-height';
