import { air } from '../../../components/air/air.ts';
import { aircraft } from '../../../components/aircraft/aircraft.ts';
import { aircraftFigures } from '../../../components/aircraft-figures/aircraft-figures.ts';
import { circleBanks } from '../../../components/circle-banks/circle-banks.ts';
import type { PacketContext } from '../../../components/context.ts';
import { finalSight } from '../../../components/final-sight/final-sight.ts';
import { gate } from '../../../components/gate/gate.ts';
import { gates } from '../../../components/gates/gates.ts';
import { ground } from '../../../components/ground/ground.ts';
import { key } from '../../../components/key/key.ts';
import { keys } from '../../../components/keys/keys.ts';
import { pattern } from '../../../components/pattern/pattern.ts';
import { profile } from '../../../components/profile/profile.ts';
import { reach } from '../../../components/reach/reach.ts';
import { roundOut } from '../../../components/round-out/round-out.ts';
import { turn } from '../../../components/turn/turn.ts';
import { turns } from '../../../components/turns/turns.ts';
import { wind } from '../../../components/wind/wind.ts';
import { windTable } from '../../../components/wind-table/wind-table.ts';
import type { Component } from '../../lesson/component.ts';

const all: readonly Component<PacketContext>[] = [
  key,
  aircraft,
  wind,
  air,
  turn,
  gate,
  ground,
  pattern,
  profile,
  reach,
  turns,
  finalSight,
  roundOut,
  keys,
  gates,
  circleBanks,
  windTable,
  aircraftFigures,
];

/**
 * The directives that a page on a screen makes again for another setting: what they print follows from the flight alone,
 * and no answer is in it. By name; each of them has one form.
 */
export const liveComponents: ReadonlyMap<string, Component<PacketContext>> = new Map(
  all.map((component) => [component.name, component]),
);
