// The page's colours for light and dark: greys, and the one warm highlight of the pictures' usual theme.
/** sRGB hex. Text on its ground keeps 4.5:1, marks and focus 3:1 (test/page/palette.test.ts). */
export const palette = {
  light: {
    ground: '#ffffff', raised: '#f3f6f9', ink: '#18202b', soft: '#4c5a6b', rule: '#c9d2dc', edge: '#74849a',
    link: '#0b57a4', mark: '#8a5300', 'mark-ground': '#fff4dc', alarm: '#a3221a', 'alarm-ground': '#fdecea',
  },
  dark: {
    ground: '#0f151d', raised: '#172029', ink: '#f4f7fa', soft: '#c2ccd8', rule: '#32404f', edge: '#5f87b8',
    link: '#8fc2ff', mark: '#ffb53d', 'mark-ground': '#2b2415', alarm: '#ff9a8f', 'alarm-ground': '#33191a',
  },
} as const;

/** `:root` blocks with custom properties: light, dark where the reader's system asks for it, light again on paper. */
export function colourRules(): string {
  const block = (colours: Record<string, string>) => Object.entries(colours).map(([name, hex]) => `--${name}:${hex}`).join(';');
  return [
    `:root{color-scheme:light dark;${block(palette.light)}}`,
    `@media screen and (prefers-color-scheme:dark){:root{${block(palette.dark)}}}`,
  ].join('\n');
}
