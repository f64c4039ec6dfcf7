import { RequestError } from '../../flight/terms/errors.ts';
import type { BeyondTheModel, FaultRefusal } from '../../flight/terms/fault.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { requestSentence } from './request-words.ts';

/** Why a fault is not flown on an approach, as a sentence. */
export function faultRefusalWords(reason: FaultRefusal | RequestError, units: PageUnits): string {
  return reason instanceof RequestError ? requestSentence(reason, units) : refusals[reason];
}

const refusals: Readonly<Record<FaultRefusal, string>> = {
  'leg-cannot-be-flown': 'A leg of it cannot be flown in this wind.',
  stalls: 'The wing stalls on the way: what follows is not in the model.',
  'already-stopped': 'The plan is flown with the engine stopped already.',
  'pull-too-weak': 'So weak a pull does not come level.',
  'no-base-turn': 'This approach begins on base leg: it has no base turn.',
  'before-downwind-key': 'So early the base turn would begin before the downwind key.',
  'too-little-wind': 'There is not so much wind to take away.',
  'no-downwind-distance': 'This approach has no downwind leg at a distance of its own.',
  'downwind-on-runway': 'The downwind leg would lie on the runway.',
  'no-base-leg': 'Between the turns of this approach there is no base leg.',
  'circle-to-final':
    'The turn to final of this approach is a circle held on the ground: its bank follows from the wind.',
  'bank-out-of-range': 'The bank would be next to nothing, or more than the aircraft may be banked.',
  'throttle-early': 'An early throttle is another start height: plan from there.',
  'nothing-before-landing': 'There is nothing before the landing.',
  'begins-in-circle': 'This approach begins in a circle, which is flown at one speed here.',
  'no-turn-to-final': 'The plan has no turn to final.',
  'no-final-left': 'So low there is no final left: the aircraft would be below the height of the round-out.',
  'no-height-for-speed': 'From no height on final does this speed lead to the planned round-out.',
  'round-out-off-final': 'The round-out would not begin on final.',
  'under-stall-speed': 'The wing does not carry at that speed.',
  'no-speed-left': 'The planned round-out leaves no more speed than that: the wheels would touch out of it.',
};

/** What the figures do not say about a landing. */
export const beyondTheModel: Readonly<Record<BeyondTheModel, string>> = {
  strike:
    'The wheels strike before the round-out is level. What the undercarriage gives back, and so the bounce, is not in the model.',
  drop: 'The wing will not carry the aircraft down from here. How it sinks, or drops a wing, is not in the model.',
  bounce:
    'The wing still carries at this speed. What the undercarriage gives back, and so the bounce, is not in the model.',
  ground: 'The ground is met before the round-out.',
  drift: 'What the wheels do with the drift is not in the model.',
};
