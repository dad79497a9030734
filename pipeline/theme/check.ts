// What makes a theme unfit: words or bars that some footage swallows, series that somebody cannot tell apart.
import { contrast, over } from './contrast.js';
import { colourDifference } from './difference.js';
import type { Colour, Theme } from './theme.js';
import { deficiencies, type Deficiency, seenBy } from './vision.js';

/** Against a panel over each of these: the extremes, and what lies between. */
export const worstFootage = { white: '#ffffff', black: '#000000', 'mid grey': '#808080' } as const;

/** WCAG 2.x, success criteria 1.4.3 (text) and 1.4.11 (what is no text). */
const least = { text: 4.5, mark: 3 } as const;
const texts: Colour[] = ['text', 'quiet', 'highlight'];
const marks: Colour[] = ['muted', 'plain', 'highlight', 'text'];
/** Drawn over a shaded stretch of time. */
const onBand: Colour[] = ['text', 'highlight', 'muted'];

/**
 * CIEDE2000 that series keep for every eye; 1 to 2 is just told apart side by side. Common practice for charts, no published source.
 * Text stands beside the second series only as the third of three.
 */
const apart = 15;
const apartThird = 10;
/** Contrast of two series that stay apart where colours blend: on a small screen, in a grey print. Common practice, no published source. */
const lightness = 2;
const series: [Colour, Colour, number][] = [
  ['muted', 'plain', apart], ['plain', 'highlight', apart], ['muted', 'highlight', apart], ['muted', 'text', apart], ['text', 'highlight', apart], ['plain', 'text', apartThird],
];

export interface ThemeFault {
  code: 'theme-contrast' | 'theme-alike';
  /** The colour at fault, and the one that it stands against. */
  colours: [Colour, Colour];
  message: string;
}

export function themeFaults({ colours, panel }: Theme): ThemeFault[] {
  const faults: ThemeFault[] = [];
  const grounds = Object.entries(worstFootage).map(([footage, hex]) => ({ footage, hex: over(colours.panel, panel.opacity, hex) }));
  for (const [names, need, what] of [[texts, least.text, 'text'], [marks.filter((m) => !texts.includes(m)), least.mark, 'bars and lines']] as const) {
    for (const name of names) {
      const worst = grounds.map((g) => ({ ...g, ratio: contrast(colours[name], g.hex) })).sort((a, b) => a.ratio - b.ratio)[0]!;
      if (worst.ratio < need) faults.push({ code: 'theme-contrast', colours: [name, 'panel'], message: `"${name}" (${colours[name]}) has a contrast of ${cut(worst.ratio)}:1 to the panel (${colours.panel} at ${panel.opacity}) over ${worst.footage} footage, and ${what} need ${need}:1` });
    }
  }
  for (const name of onBand) {
    const ratio = contrast(colours[name], colours.band);
    if (ratio < least.mark) faults.push({ code: 'theme-contrast', colours: [name, 'band'], message: `"${name}" (${colours[name]}) has a contrast of ${cut(ratio)}:1 to "band" (${colours.band}), and what is drawn over it needs ${least.mark}:1` });
  }
  for (const [a, b, need] of series) {
    const seen = [['every eye', (hex: string) => hex] as const, ...(Object.keys(deficiencies) as Deficiency[]).map((d) => [`${d} eyes`, (hex: string) => seenBy(d, hex)] as const)];
    const worst = seen.map(([who, see]) => ({ who, is: colourDifference(see(colours[a]), see(colours[b])) })).sort((x, y) => x.is - y.is)[0]!;
    if (worst.is < need) faults.push({ code: 'theme-alike', colours: [a, b], message: `"${a}" (${colours[a]}) and "${b}" (${colours[b]}) look too alike to ${worst.who}: a difference of ${cut(worst.is)} (CIEDE2000), and ${need} is needed` });
  }
  const ratio = contrast(colours.muted, colours.plain);
  if (ratio < lightness) faults.push({ code: 'theme-alike', colours: ['plain', 'muted'], message: `"plain" (${colours.plain}) and "muted" (${colours.muted}), the first two series, are too alike in lightness: a contrast of ${cut(ratio)}:1, and ${lightness}:1 is needed` });
  return faults;
}

/** Two decimals, never up: 4.499 is not 4.5. */
function cut(ratio: number): string {
  return String(Math.floor(ratio * 100 + 1e-9) / 100);
}
