// How unlike two colours look: CIEDE2000 (CIE 142-2001), D65, all weights 1.
import { channels, linear } from './contrast.js';

type Lab = [lightness: number, a: number, b: number];

/** CIE L*a*b* of "#rrggbb" under D65. */
export function lab(hex: string): Lab {
  const [r, g, b] = channels(hex).map((c) => linear(c / 255)) as [number, number, number];
  // sRGB to XYZ (IEC 61966-2-1), over the white of D65.
  const x = (0.4123908 * r + 0.3575843 * g + 0.1804808 * b) / 0.9504559;
  const y = 0.2126390 * r + 0.7151687 * g + 0.0721923 * b;
  const z = (0.0193308 * r + 0.1191948 * g + 0.9505322 * b) / 1.0890578;
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27 * t + 16) / 116);
  return [116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))];
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const radians = (d: number): number => (d * Math.PI) / 180;
const seventh = (c: number): number => Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7));

/** 0 for the same colour; about 1 is just seen side by side. */
export function colourDifference(first: string, second: string): number {
  const [l1, a1, b1] = lab(first);
  const [l2, a2, b2] = lab(second);
  const g = 0.5 * (1 - seventh((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2));
  const [p1, p2] = [a1 * (1 + g), a2 * (1 + g)];
  const [c1, c2] = [Math.hypot(p1, b1), Math.hypot(p2, b2)];
  const hue = (a: number, b: number): number => (a === 0 && b === 0 ? 0 : (degrees(Math.atan2(b, a)) + 360) % 360);
  const [h1, h2] = [hue(p1, b1), hue(p2, b2)];
  const grey = c1 * c2 === 0;
  const turn = grey ? 0 : Math.abs(h2 - h1) <= 180 ? h2 - h1 : h2 > h1 ? h2 - h1 - 360 : h2 - h1 + 360;
  const dl = l2 - l1;
  const dc = c2 - c1;
  const dh = 2 * Math.sqrt(c1 * c2) * Math.sin(radians(turn / 2));
  const l = (l1 + l2) / 2;
  const c = (c1 + c2) / 2;
  const h = grey ? h1 + h2 : Math.abs(h1 - h2) <= 180 ? (h1 + h2) / 2 : h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
  const t = 1 - 0.17 * Math.cos(radians(h - 30)) + 0.24 * Math.cos(radians(2 * h)) + 0.32 * Math.cos(radians(3 * h + 6)) - 0.2 * Math.cos(radians(4 * h - 63));
  const sl = 1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2);
  const sc = 1 + 0.045 * c;
  const sh = 1 + 0.015 * c * t;
  const rotation = -Math.sin(radians(60 * Math.exp(-(((h - 275) / 25) ** 2)))) * 2 * seventh(c);
  return Math.sqrt((dl / sl) ** 2 + (dc / sc) ** 2 + (dh / sh) ** 2 + rotation * (dc / sc) * (dh / sh));
}
