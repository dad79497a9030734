// The colours of every picture and page: blues and near-whites for everything, one warm highlight for what matters.

/** sRGB hex. On the panel over white footage text keeps 4.5:1 and bars 3:1 (test/theme/colours.test.ts). */
export const colours = {
  panel: '#0f151d',
  text: '#f4f7fa',
  quiet: '#c2ccd8',
  /** Bars and lines that are there to be compared with. */
  muted: '#5f87b8',
  /** The second of two series: so much lighter than the first that a small screen or a grey print tells them apart. */
  plain: '#c4d6ea',
  /** The one thing to look at. */
  highlight: '#ffb53d',
  rule: '#46566a',
  band: '#2b3a4d',
  /** Draft stamp and nothing else. */
  stamp: '#ff6f61',
  page: '#ffffff',
  ink: '#18202b',
} as const;

export type Colour = keyof typeof colours;

/** Opacity of the dark panel under all text, so that a picture can lie over any footage. */
export const panelOpacity = 0.9;
