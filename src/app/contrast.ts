/**
 * Contrast and colour distance, so that the look is measured and not hoped for. WCAG 2.2 relative luminance and
 * contrast ratio; colours are sRGB hex. Used by the tests and to pick readable ink on a runner's colour.
 */

export type Rgb = readonly [r: number, g: number, b: number];

/** Linear-light components, 0 to 1, of `#rrggbb`. */
export function linearRgb(hex: string): Rgb {
  const part = (at: number) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
}

function luminance(hex: string): number {
  const [r, g, b] = linearRgb(hex);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** From 1 (the same) to 21 (black on white). */
export function contrast(a: string, b: string): number {
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

/** `share` of `over` laid on `under`, mixed as the browser mixes sRGB. */
export function mix(over: string, under: string, share: number): string {
  const part = (hex: string, at: number) => Number.parseInt(hex.slice(at, at + 2), 16);
  const both = [1, 3, 5].map((at) => Math.round(part(over, at) * share + part(under, at) * (1 - share)));
  return `#${both.map((c) => c.toString(16).padStart(2, '0')).join('')}`;
}
