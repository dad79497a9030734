// The frames that pictures are made for: their sizes, the area that text may fill, and the theme's type as it is set there.
import { type Rect, safeArea } from './sizes.js';
import type { Colours, Space, Stroke, Theme, TypeScale } from './theme.js';

export const stageIds = ['wide', 'tall', 'square', 'page'] as const;
export type StageId = (typeof stageIds)[number];

export interface Size {
  width: number;
  height: number;
}

/** All that a layout is handed about where it stands and how it looks. */
export interface Stage {
  id: StageId;
  /** Of the layout, in pixels. */
  width: number;
  height: number;
  /** The area for text. */
  safe: Rect;
  /** The panel of a full picture. */
  panel: Rect;
  /** Where the text of a full picture stands: its left, right and top edge, and its last baseline. */
  content: { left: number; right: number; top: number; bottom: number };
  /** From the edge of any panel to its text. */
  padding: { side: number; top: number; bottom: number };
  /** Too narrow for names beside their bars and a legend beside its subtitle: they stand above and below instead. */
  narrow: boolean;
  /** Footage never shows through. */
  opaque: boolean;
  /** Thickness of bars, in pixels. */
  bars: { least: number; most: number };
  theme: Theme;
  colours: Colours;
  type: TypeScale;
  space: Space;
  stroke: Stroke;
}

type Frame = Pick<Stage, 'width' | 'height' | 'safe' | 'panel' | 'content' | 'padding' | 'narrow' | 'opaque' | 'bars'>;

/** Inset of the area for text, per edge and as a share of the width or the height (EBU R 95, SMPTE ST 2046-1: 5 %; action 3.5 %). */
export const insets = { text: 0.05, action: 0.035 } as const;

const frames: Record<StageId, Frame> = {
  wide: {
    width: 1920, height: 1080, safe: safeArea(1920, 1080, insets.text),
    panel: { x: 40, y: 40, width: 1840, height: 1000 }, content: { left: 104, right: 1816, top: 104, bottom: 984 }, padding: { side: 64, top: 56, bottom: 56 },
    narrow: false, opaque: false, bars: { least: 40, most: 88 },
  },
  // Players of upright video lay their own words over the top and over the lowest fifth; common practice, no published source.
  tall: {
    width: 1080, height: 1920, safe: { x: 54, y: 192, width: 972, height: 1344 },
    panel: { x: 22, y: 148, width: 1036, height: 1416 }, content: { left: 66, right: 1014, top: 208, bottom: 1512 }, padding: { side: 44, top: 52, bottom: 52 },
    narrow: true, opaque: false, bars: { least: 40, most: 96 },
  },
  square: {
    width: 1080, height: 1080, safe: safeArea(1080, 1080, insets.text),
    panel: { x: 22, y: 22, width: 1036, height: 1030 }, content: { left: 66, right: 1014, top: 72, bottom: 1004 }, padding: { side: 44, top: 46, bottom: 48 },
    narrow: true, opaque: false, bars: { least: 40, most: 64 },
  },
  page: {
    width: 1280, height: 1024, safe: { x: 48, y: 40, width: 1184, height: 944 },
    panel: { x: 0, y: 0, width: 1280, height: 1024 }, content: { left: 56, right: 1224, top: 56, bottom: 968 }, padding: { side: 56, top: 52, bottom: 52 },
    narrow: false, opaque: true, bars: { least: 40, most: 76 },
  },
};

/** Large type where there is less room across, as shares of the theme's; what a viewer must read stays as large everywhere. */
const shrunk = { title: 0.9, heading: 0.77, figure: 0.85 } as const;

export function stageOf(theme: Theme, id: StageId): Stage {
  const frame = frames[id];
  const { type } = theme;
  const smaller = (name: keyof typeof shrunk) => ({ ...type[name], size: Math.max(type.name.size, Math.round(type[name].size * shrunk[name])) });
  return {
    id, ...frame, theme, colours: theme.colours, space: theme.space, stroke: theme.stroke,
    type: id !== 'wide' ? { ...type, title: smaller('title'), heading: smaller('heading'), figure: smaller('figure') } : type,
  };
}

/** The sizes in which pictures are made, and the stage that each is laid out for: 3840×2160 is 1920×1080 drawn larger. */
export const pictureSizes: readonly (Size & { stage: StageId })[] = [
  { width: 1920, height: 1080, stage: 'wide' }, { width: 3840, height: 2160, stage: 'wide' },
  { width: 1080, height: 1920, stage: 'tall' }, { width: 1080, height: 1080, stage: 'square' }, { width: 1280, height: 1024, stage: 'page' },
];
