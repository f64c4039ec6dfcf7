import { describe, expect, it } from 'vitest';
import { parseQuantity } from './quantity.ts';

describe('unit definitions agree with what is published', () => {
  it('the yard is 0.9144 m and the pound 0.45359237 kg (international yard and pound agreement, 1959)', () => {
    expect(parseQuantity('3 ft', 'length')).toBeCloseTo(0.9144, 12);
    expect(parseQuantity('5280 ft', 'length')).toBeCloseTo(parseQuantity('1 mi', 'length'), 9);
    expect(parseQuantity('1 lb', 'mass')).toBe(0.45359237);
  });

  it('the nautical mile is 1852 m (BIPM, SI Brochure, 8th ed. 2006, table 8, recalled from memory), so a knot is 1852 m in an hour', () => {
    expect(parseQuantity('1 NM', 'length')).toBe(1852);
    expect(parseQuantity('1 kt', 'speed') * 3600).toBeCloseTo(1852, 9);
    expect(parseQuantity('1 kt', 'speed')).toBeCloseTo(parseQuantity('1.852 km/h', 'speed'), 12);
  });

  it('a nautical mile has 6076.11549 ft (from the definitions above)', () => {
    expect(parseQuantity('1 NM', 'length') / parseQuantity('1 ft', 'length')).toBeCloseTo(6076.11549, 5);
  });

  it('the inch of mercury is 3386.389 Pa (NIST SP 811, 2008, appendix B.8), which makes 29.92126 inHg of 101325 Pa (ISA)', () => {
    expect(parseQuantity('1 inHg', 'pressure')).toBe(3386.389);
    expect(Math.abs(101325 - parseQuantity('29.92126 inHg', 'pressure'))).toBeLessThan(0.1);
  });

  it('feet per minute and miles per hour as in NIST SP 811 (2008) appendix B.8, recalled from memory: 5.08e-3 and 0.44704', () => {
    expect(parseQuantity('1 ft/min', 'vertical-speed')).toBeCloseTo(5.08e-3, 12);
    expect(parseQuantity('1 mph', 'speed')).toBeCloseTo(0.44704, 12);
  });

  it('59 F is 15 C is 288.15 K (standard sea-level temperature, US Standard Atmosphere 1976); −40 is −40 on both', () => {
    expect(parseQuantity('59 F', 'temperature')).toBeCloseTo(288.15, 10);
    expect(parseQuantity('15°C', 'temperature')).toBeCloseTo(288.15, 10);
    expect(parseQuantity('−40 °F', 'temperature')).toBeCloseTo(parseQuantity('-40C', 'temperature'), 10);
  });
});
