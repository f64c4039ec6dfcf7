/** Relative luminance of an sRGB colour `#rrggbb`, 0–1 (WCAG 2.2, W3C Recommendation 2023, definition of relative luminance). */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colours, 1–21 (WCAG 2.2, definition of contrast ratio). */
export function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** How light a colour looks once printed in grey: L*, 0 black to 100 white (CIE 15:2004, 8.2.1). */
export function lightness(colour: string): number {
  const y = luminance(colour);
  return y > (6 / 29) ** 3 ? 116 * Math.cbrt(y) - 16 : (29 / 3) ** 3 * y;
}
