/**
 * The approaches by their ids. What each is stands in a file of its own in `flight/approaches`, what it is called in
 * `words/approaches`; one that is missing there is a type error.
 */
export const approachIds = ['90', '180', '360', 'spiral'] as const;

export type Approach = (typeof approachIds)[number];

/** What may be asked of one approach alone, under its id; what is left out is found. */
export interface ApproachOptions {
  readonly '90'?: {
    /** m from the spot to the base leg. */
    readonly baseDistance?: number | undefined;
  };
  readonly spiral?: {
    /** Whole circles. Default: as many shallow ones as the height allows. */
    readonly circles?: number | undefined;
    /** The circles drift with the wind; else they are held on the ground. */
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
