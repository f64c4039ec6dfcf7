import { angleBetween } from '../../src/flight/numerics/angle.ts';
import type { Field } from '../../src/flight/questions/landing-places.ts';
import type { Runway } from '../../src/flight/terms/airfield.ts';
import type { PacketContext } from '../context.ts';

/**
 * The airfield's fields in the frame of the runway that is landed on; `unplaced` where nothing says where that runway
 * lies.
 */
export interface FieldsBeside {
  readonly fields: readonly Field[];
  readonly unplaced: readonly string[];
}

/**
 * An airfield file gives its fields from the spot of its first runway. From another runway they are known only where
 * it is the same strip landed on from its other end: nothing in the file says how two strips lie to each other.
 */
export function fieldsBeside({ request, school }: Pick<PacketContext, 'request' | 'school'>): FieldsBeside {
  const files = [...school.airfields.values()];
  const file = files.find((each) => each === request.airfield || each.name === request.airfield.name);
  const fields = file?.fields ?? [];
  const first = file?.runways[0];
  if (!first || fields.length === 0) return { fields: [], unplaced: [] };
  if (first.name === request.runway.name) return { fields, unplaced: [] };
  if (!isOtherEnd(first, request.runway)) return { fields: [], unplaced: fields.map(({ name }) => name) };
  const between = first.length - first.spot - request.runway.spot;
  return {
    fields: fields.map((field) => ({ ...field, along: between - field.along, across: -field.across })),
    unplaced: [],
  };
}

function isOtherEnd(a: Runway, b: Runway): boolean {
  const opposite = Math.abs(Math.abs(angleBetween(a.heading, b.heading)) - Math.PI) < 0.05;
  return opposite && Math.abs(a.length - b.length) < 1;
}
