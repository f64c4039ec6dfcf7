import type { PageUnits } from './page-units.ts';

/** The units of the trade where nobody has chosen others: of a terminal, a plan as JSON, a map's description. */
export const aviation: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };
