// Texts at places of their own, as layers: one for each style and alignment.
import type { Colours, TextStyle } from '../theme/index.js';
import type { Spec } from './spec.js';

export interface PlacedText {
  text: string;
  /** Pixels of the plot; y is the baseline. */
  x: number;
  y: number;
  style: TextStyle;
  colour: keyof Colours;
  align?: 'left' | 'center' | 'right';
}

export function textLayers(colours: Colours, texts: readonly PlacedText[]): Spec[] {
  const groups = new Map<string, PlacedText[]>();
  for (const t of texts) {
    if (!t.text) continue;
    const key = `${t.style.size}/${t.style.weight}/${t.align ?? 'left'}`;
    groups.set(key, [...(groups.get(key) ?? []), t]);
  }
  return [...groups.values()].map((group) => ({
    data: { values: group.map(({ text, x, y, colour }) => ({ text, x: Math.round(x), y: Math.round(y), colour: colours[colour] })) },
    mark: { type: 'text', align: group[0]!.align ?? 'left', baseline: 'alphabetic', dy: 0, fontSize: group[0]!.style.size, fontWeight: group[0]!.style.weight },
    encoding: { x: pixels('x'), y: pixels('y'), text: { field: 'text' }, color: { field: 'colour', type: 'nominal', scale: null } },
  }));
}

/** A field that holds pixels of the plot. */
export function pixels(field: string): Spec {
  return { field, type: 'quantitative', scale: null, axis: null };
}
