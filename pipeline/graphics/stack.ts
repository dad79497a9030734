// Lines set one below the other, each at a gap from what stands above it.
import type { Line, TextStyle } from '../theme/index.js';
import type { Block, Composer } from './compose.js';

export class Stack {
  readonly lines: Line[] = [];
  /** Of the widest line. */
  widest = 0;
  /** Where the next line would begin, without its gap: the baseline of the last one. */
  bottom: number;
  readonly #sheet: Composer;
  readonly #x: number;
  readonly #width: number;

  constructor(sheet: Composer, { x, top, width }: { x: number; top: number; width: number }) {
    this.#sheet = sheet;
    this.#x = x;
    this.#width = width;
    this.bottom = top;
  }

  put(text: string, style: TextStyle, colour: Line['colour'], gap = 0, most = 1): Block {
    const block = this.#sheet.block(text, style, colour, { x: this.#x, top: this.bottom + gap, width: this.#width, most });
    this.lines.push(...block.lines);
    this.widest = Math.max(this.widest, block.width);
    this.bottom = block.bottom;
    return block;
  }
}

/** The first of the styles in which all of the texts fit into the width together, the last one where none does. */
export function fitting<S>(styles: readonly S[], width: (style: S) => number, room: number): S {
  return styles.find((s) => width(s) <= room) ?? styles.at(-1)!;
}
