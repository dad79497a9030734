// The bundled typeface, read from its package when text is first measured; no font of the system is ever asked for.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Font } from 'fontkit';
import type { Weight } from './sizes.js';

export const family = 'Inter';

const files: Record<Weight, string> = {
  500: '500Medium/Inter_500Medium.ttf',
  600: '600SemiBold/Inter_600SemiBold.ttf',
  700: '700Bold/Inter_700Bold.ttf',
};

const require = createRequire(import.meta.url);
const open = new Map<Weight, Font>();

export function font(weight: Weight): Font {
  let face = open.get(weight);
  if (!face) {
    const { create } = require('fontkit') as typeof import('fontkit');
    face = create(readFileSync(fontFile(weight))) as Font;
    open.set(weight, face);
  }
  return face;
}

/** Absolute path of the TrueType file, for cache keys. */
export function fontFile(weight: Weight): string {
  return require.resolve(`@expo-google-fonts/inter/${files[weight]}`);
}

export const weights = Object.keys(files).map(Number) as Weight[];

/** The nearest weight that is bundled. */
export function nearestWeight(wanted: number): Weight {
  return wanted < 550 ? 500 : wanted < 650 ? 600 : 700;
}
