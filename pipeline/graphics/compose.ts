// Composing from measured text: lines are set one below the other, then the whole is moved to where it belongs and a panel put around it.
import { capHeight, type Line, lineHeight, measure, type Misfit, type Rect, type Stage, type TextStyle, wrap } from '../theme/index.js';
import type { Fact, Facts } from '../facts/index.js';
import { isFact } from '../facts/index.js';

export interface Block {
  lines: Line[];
  width: number;
  /** Baseline of the last line. */
  bottom: number;
}

export class Composer {
  readonly misfits: Misfit[] = [];
  /** What it is laid out for: its size, the area for text, and the theme's colours and type as they are there. */
  readonly stage: Stage;
  readonly complain: (code: string, message: string, subject?: string) => undefined;

  constructor(stage: Stage, complain: Composer['complain']) {
    this.stage = stage;
    this.complain = complain;
  }

  /** Of the area where text may stand. */
  get fullWidth(): number {
    return this.stage.content.right - this.stage.content.left;
  }

  /** Between lines that belong together, and between parts. */
  get gaps(): { line: number; part: number } {
    return { line: this.stage.space.small, part: this.stage.space.medium };
  }

  /** The fact, or a finding why it cannot be shown. */
  fact(facts: Facts, id: string): Fact | undefined {
    const fact = facts.get(id);
    return isFact(fact) ? fact : this.complain('picture-empty', `cannot show ${id}: ${fact && 'why' in fact ? fact.why : 'it is no fact id'}`, id);
  }

  /** A finding that says what to shorten (`remedy`), where the panel of picture `name` reaches out at the top. */
  within(panel: Rect, name: string, remedy: string): void {
    const over = this.stage.panel.y - panel.y;
    if (over > 4) this.complain('label-too-long', `picture "${name}" is ${Math.ceil(over)} px too high; ${remedy}`);
  }

  /** Text on as few lines as it needs, its first capital line at `top`; too long a text is a misfit. */
  block(text: string, style: TextStyle, colour: Line['colour'], at: { x: number; top: number; width: number; most?: number; anchor?: Line['anchor'] }): Block {
    const wrapped = wrap(text, style, at.width, at.most ?? 1);
    if ('misfit' in wrapped) this.misfits.push(wrapped.misfit);
    const texts = 'lines' in wrapped ? wrapped.lines : [text];
    const first = at.top + capHeight * style.size;
    const lines = texts.map((t, i): Line => ({ text: t, x: at.x, y: first + i * style.size * lineHeight, style, colour, ...(at.anchor && { anchor: at.anchor }) }));
    return { lines, width: Math.max(...texts.map((t) => measure(t, style))), bottom: lines.at(-1)!.y };
  }
}

/** The panel around a composition that stands at the lower left, and how far the composition must be moved down for that. */
export function lowerLeft({ content, panel, padding }: Stage, width: number, bottom: number): { panel: Rect; shift: number } {
  const height = bottom - content.top + padding.top + padding.bottom;
  return { shift: content.bottom - bottom, panel: { x: panel.x, y: panel.y + panel.height - height, width: Math.ceil(width) + 2 * padding.side, height } };
}

/** A composition is never drawn larger than so many times: beyond that it is a poster. */
const largest = 1.5;

/** Where no footage shows through, a composition fills the picture as far as it can, and stands a little above its middle. */
export function filling({ width, height }: Stage, panel: Rect): string {
  const k = Math.min(largest, width / panel.width, height / panel.height);
  const px = (n: number): number => Math.round(n * 1000) / 1000;
  return `translate(${px(-panel.x * k)} ${px(0.45 * (height - panel.height * k) - panel.y * k)}) scale(${px(k)})`;
}

/** Moved down by `shift`. */
export function move<T extends { y: number }>(things: T[], shift: number): T[] {
  return things.map((t) => ({ ...t, y: t.y + shift }));
}
