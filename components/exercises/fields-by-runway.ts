import type { Field } from '../../src/flight/questions/landing-places.ts';
import type { Runway } from '../../src/flight/terms/airfield.ts';
import type { AirfieldFile } from '../../src/school/airfield.ts';

/** A field's landing spot is this share of its length in, and its file gives obstacles from its threshold. */
const spotShare = 0.25;

/**
 * The airfield's fields in the frame of a runway. The file gives them in that of the first runway; from the other end
 * of the same strip they are turned round. Empty for any other runway: the file does not say where that lies.
 */
export function fieldsFor(runway: Runway, airfield: AirfieldFile | undefined): Field[] {
  const [first] = airfield?.runways ?? [];
  if (!airfield || !first) return [];
  const fields = (airfield.fields ?? []).map((field) => ({
    ...field,
    obstacles: field.obstacles.map((each) => ({ ...each, along: each.along - spotShare * field.length })),
  }));
  if (runway.name === first.name) return fields;
  const isOtherEnd =
    Math.abs(Math.cos(runway.heading - first.heading) + 1) < 1e-3 &&
    Math.abs(runway.length - first.length) < 1;
  if (!isOtherEnd) return [];
  const between = first.length - first.spot - runway.spot;
  return fields.map((field) => ({ ...field, along: between - field.along, across: -field.across }));
}
