import type { Component } from '../src/lesson/component.ts';
import { aircraft } from './aircraft/aircraft.ts';
import { caution } from './caution/caution.ts';
import type { PacketContext } from './context.ts';
import { elements } from './elements/elements.ts';
import { key } from './key/key.ts';
import { keys } from './keys/keys.ts';
import { objective } from './objective/objective.ts';
import { pattern } from './pattern/pattern.ts';
import { profile } from './profile/profile.ts';
import { standards } from './standards/standards.ts';
import { wind } from './wind/wind.ts';

/** Every directive of the lesson language. */
export const components: readonly Component<PacketContext>[] = [
  objective,
  elements,
  standards,
  caution,
  key,
  aircraft,
  wind,
  keys,
  pattern,
  profile,
];
