/** A school's files as other programs read them (`chalkwing/school`), and quantities as people write them. */

export type { Amount, FaultChange } from '../flight/terms/fault.ts';
export type { AircraftFile } from '../school/aircraft.ts';
export type { AirfieldFile } from '../school/airfield.ts';
export type { FaultsFile } from '../school/faults.ts';
export type { FlyText } from '../school/fly-text.ts';
export { type ReadFile, type ReadSchool, readAircraft, readAirfield, readSchool } from '../school/read.ts';
export type { School, SchoolSettings } from '../school/school.ts';
export type { SchoolFolder } from '../school/school-folder.ts';
export { parseQuantity, QuantityError, type QuantityKind } from '../units/quantity.ts';
export { parseWind, type Wind } from '../units/wind-text.ts';
