// Scales with round steps, and their grid lines and figures as layers, measured so that nothing is cut or dropped.
import { Exact, showNumber } from '../quantities/index.js';
import { measure, type Stage, type TextStyle } from '../theme/index.js';
import type { Spec } from './spec.js';
import { pixels } from './texts.js';

export interface Ticks {
  domain: [number, number];
  at: { value: number; text: string }[];
}

export function tickStyle({ type }: Stage): TextStyle {
  return { ...type.small, tabular: true };
}

/** Round steps (1, 2, 5 times a power of ten; or of `steps`), at most `most` of them, covering low to high. */
export function ticks(low: number, high: number, most: number, steps?: readonly number[]): Ticks {
  const span = high - low || Math.abs(high) || 1;
  const step = (steps ?? decimalSteps(span / most)).find((s) => Math.ceil(high / s - 1e-9) - Math.floor(low / s + 1e-9) <= most) ?? span;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const at = Array.from({ length: last - first + 1 }, (_, i) => {
    const value = Exact.fromNumber(first + i).times(Exact.fromNumber(step));
    return { value: value.toNumber(), text: showNumber(value, decimals) };
  });
  return { domain: [at[0]!.value, at.at(-1)!.value], at };
}

function decimalSteps(least: number): number[] {
  const power = Math.floor(Math.log10(least));
  return [power, power + 1].flatMap((p) => [1, 2, 5].map((n) => Number(`${n}e${p}`)));
}

export function widestTick(stage: Stage, { at }: Ticks): number {
  return Math.max(...at.map((t) => measure(t.text, tickStyle(stage))));
}

/** The same, but with so few steps that no figure touches the next on `width` pixels, and with figures at the ends alone where even two steps are too many. */
export function fittingTicks(stage: Stage, low: number, high: number, most: number, width: number, steps?: readonly number[]): Ticks {
  for (let count = most; count > 1; count--) {
    const found = ticks(low, high, count, steps);
    const space = width / (found.at.length - 1);
    const widths = found.at.map((t) => measure(t.text, tickStyle(stage)));
    if (widths.every((w, i) => i === 0 || (w + widths[i - 1]!) / 2 + stage.space.small <= space)) return found;
  }
  const { domain, at } = ticks(low, high, 2, steps);
  return { domain, at: [at[0]!, at.at(-1)!] };
}

/** As many steps as leave their figures apart, on this stage. */
export function mostTicks({ id }: Stage, body: { width: number; height: number }, wide: { across: number; up: number }): { across: number; up: number } {
  return id !== 'wide' ? { across: Math.max(3, Math.floor(body.width / 230)), up: Math.min(8, Math.max(3, Math.round(body.height / 130))) } : wide;
}

/** Below a plot: figures, and the name of the scale under them. */
export const below = { figures: 64, named: 64 + 54 } as const;

/**
 * Vertical grid lines with their figures below, and under those what they are figures of. `x` is the shared encoding of the scale.
 * With `stretches` the lines are only seen there.
 */
export function acrossLayers(stage: Stage, { at }: Ticks, x: Spec, height: number, more: { name?: string; width?: number; stretches?: { from: number; to: number }[] } = {}): Spec[] {
  const values = at.map((t) => ({ at: t.value, text: t.text }));
  const place = { ...x, field: 'at' };
  const lines = (more.stretches ?? [{ from: 0, to: height }]).flatMap((s) => at.map((t) => ({ at: t.value, ...s })));
  return [
    { data: { values: lines }, mark: { type: 'rule', stroke: stage.colours.rule, strokeWidth: 2 }, encoding: { x: place, y: pixels('from'), y2: { field: 'to' } } },
    { data: { values }, mark: { ...tickMark(stage), align: 'center' }, encoding: { x: place, y: { value: height + 42 }, text: { field: 'text' } } },
    ...(more.name !== undefined ? [{ data: { values: [{ text: more.name }] }, mark: { ...tickMark(stage), align: 'center' }, encoding: { x: { value: Math.round((more.width ?? 0) / 2) }, y: { value: height + 40 + below.named - below.figures }, text: { field: 'text' } } }] : []),
  ];
}

/** Horizontal grid lines with their figures at the left. */
export function upLayers(stage: Stage, { at }: Ticks, y: Spec, width: number): Spec[] {
  const values = at.map((t) => ({ at: t.value, text: t.text }));
  const place = { ...y, field: 'at' };
  return [
    { data: { values }, mark: { type: 'rule', stroke: stage.colours.rule, strokeWidth: 2 }, encoding: { y: place, x: { value: 0 }, x2: { value: width } } },
    { data: { values }, mark: { ...tickMark(stage), align: 'right' }, encoding: { y: place, x: { value: -20 }, text: { field: 'text' } } },
  ];
}

function tickMark(stage: Stage): Spec {
  const { size, weight } = tickStyle(stage);
  return { type: 'text', fontSize: size, fontWeight: weight, fill: stage.colours.quiet };
}
