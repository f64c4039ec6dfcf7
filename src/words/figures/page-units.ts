/** The units of the printed page, chosen by the school. */
export interface PageUnits {
  readonly height: 'ft' | 'm';
  readonly distance: 'm' | 'ft';
  readonly speed: 'kt' | 'km/h' | 'mph';
}
