// Relative luminance and contrast as WCAG 2.x defines them; no rounding, 4.499 is not 4.5.

type Rgb = [number, number, number];

/** Channels 0 to 255 of "#rrggbb". Throws RangeError on anything else. */
export function channels(hex: string): Rgb {
  const m = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex);
  if (!m) throw new RangeError(`not a colour: ${hex}`);
  return [parseInt(m[1]!, 16), parseInt(m[2]!, 16), parseInt(m[3]!, 16)];
}

/** Gamma-coded channel, 0 to 1, to linear light. */
export function linear(c: number): number {
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

/** Linear light, 0 to 1, to the gamma-coded channel. */
export function coded(light: number): number {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
}

/** 0 (black) to 1 (white). */
export function luminance(hex: string): number {
  const [r, g, b] = channels(hex).map((c) => linear(c / 255)) as Rgb;
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** 1 to 21. */
export function contrast(a: string, b: string): number {
  const x = luminance(a);
  const y = luminance(b);
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

/** What is seen where `top` lies at `opacity` over `below`, blended in gamma-coded sRGB as renderers and editors do. */
export function over(top: string, opacity: number, below: string): string {
  const a = channels(top);
  const b = channels(below);
  return `#${a.map((c, i) => Math.round(c * opacity + b[i]! * (1 - opacity)).toString(16).padStart(2, '0')).join('')}`;
}
