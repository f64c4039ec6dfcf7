/** Standard gravity, m/s2 (3rd CGPM, 1901). */
export const standardGravity = 9.80665;

/** US Standard Atmosphere 1976 (ISO 2533 agrees below 32 km), part 1: sea level and the lowest layer. */
export const seaLevelTemperature = 288.15;
export const seaLevelPressure = 101325;
/** K/m. */
export const lapseRate = 0.0065;
/** J/(kg K): R* 8314.32 J/(kmol K) over M 28.9644 kg/kmol. */
export const gasConstant = 8314.32 / 28.9644;
export const seaLevelDensity = seaLevelPressure / (gasConstant * seaLevelTemperature);
