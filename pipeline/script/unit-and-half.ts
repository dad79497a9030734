// A unit said in the middle of its number: "a decibel and a half", "two degrees and a quarter".
import { Exact } from '../quantities/index.js';
import type { Mention } from './mentions.js';
import type { Token } from './tokens.js';
import { unitAt } from './unit-words.js';

const parts: Record<string, number> = { half: 2, quarter: 4, third: 3 };

/** Joins the two in place; `blank` makes a mention of the tokens given. */
export function joinHalves(t: readonly Token[], list: Mention[], blank: (from: number, to: number) => Mention): void {
  for (let k = 0; k < list.length; k++) {
    const b = list[k]!;
    if (b.type !== 'fraction' || b.unit) continue;
    const part = parts[t[b.to - 1]!.low];
    if (!part || t[b.from - 1]?.low !== 'and' || !/^(?:a|half|quarter|third)$/.test(t[b.from]!.low) || b.to - b.from > 2) continue;
    const a = list.find((m) => m.to === b.from - 1 && m.type === 'cardinal' && m.unit && m.decimals <= 0 && !m.step) ?? one(t, b.from - 1, blank);
    if (!a) continue;
    const joined: Mention = { ...a, to: b.to, end: b.end, value: a.value.plus(Exact.of(1n, BigInt(part))), step: Exact.of(1n, BigInt(part)) };
    list.splice(0, list.length, ...list.filter((m) => m.to <= joined.from || m.from >= joined.to), joined);
    list.sort((x, y) => x.from - y.from);
  }
}

/** "a decibel", right before `to`. */
function one(t: readonly Token[], to: number, blank: (from: number, to: number) => Mention): Mention | undefined {
  for (const i of [to - 2, to - 3, to - 4]) {
    const u = i >= 0 && /^(?:a|an|one)$/.test(t[i]!.low) ? unitAt(t, i + 1, true) : undefined;
    if (u && u.to === to) return { ...blank(i, to), unit: u.unit, loose: u.loose };
  }
  return undefined;
}
