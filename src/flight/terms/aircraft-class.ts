/** What the figures and the words of a flight depend on in an aircraft's class. */
interface AircraftClassTerms {
  /** A wing without flap, brake or slip: it has one polar, whatever is done to steepen the glide. */
  readonly hasOnePolar: boolean;
  /** It touches in the crab, off the way the nose points, and rightly so. */
  readonly touchesInCrab: boolean;
}

/** The classes of aircraft. What each is called is in `words/aircraft`; a name that is missing there is a type error. */
export const classTerms = {
  'weight-shift': { hasOnePolar: true, touchesInCrab: true },
  'three-axis': { hasOnePolar: false, touchesInCrab: false },
  'powered-parachute': { hasOnePolar: false, touchesInCrab: false },
  glider: { hasOnePolar: false, touchesInCrab: false },
} as const satisfies Readonly<Record<string, AircraftClassTerms>>;

export type AircraftClass = keyof typeof classTerms;

export const aircraftClasses = Object.keys(classTerms) as readonly AircraftClass[];
