import type { PageUnits } from './page-units.ts';

/** The units of the trade, where nobody has chosen others: in a terminal, in a plan as JSON, in a map's description. */
export const aviation: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };
