/**
 * Exact factors to SI units. Foot, nautical mile, statute mile and pound: international definitions (yard and pound
 * agreement of 1959; nautical mile 1929). Inch of mercury: conventional value, NIST SP 811.
 */
export const metresPerFoot = 0.3048;
export const metresPerNauticalMile = 1852;
export const metresPerStatuteMile = 1609.344;
export const metresPerSecondPerKnot = metresPerNauticalMile / 3600;
export const metresPerSecondPerKmh = 1000 / 3600;
export const metresPerSecondPerMph = metresPerStatuteMile / 3600;
export const metresPerSecondPerFootPerMinute = metresPerFoot / 60;
export const kilogramsPerPound = 0.45359237;
export const pascalsPerHectopascal = 100;
export const pascalsPerInchOfMercury = 3386.389;
export const kelvinAtZeroCelsius = 273.15;
export const radiansPerDegree = Math.PI / 180;
