// "76 percent, 77 and 79": a unit said with the first of a list goes on to the bare numbers behind it, where they are said alike.
import type { Mention } from './mentions.js';
import type { Token } from './tokens.js';

const joint = /^(?:,|and|, and)$/;
/** What may follow a bare number that is a figure: nothing that it could count. */
const closed = /^(?:[,.;:!?)…—–]|and|respectively|in|on|at|for|with)?$/;

export function unitsOnwards(t: readonly Token[], list: readonly Mention[]): void {
  for (let k = 1; k < list.length; k++) {
    const [a, b] = [list[k - 1]!, list[k]!];
    if (!a.unit || b.unit || a.adjectival || a.unit.id === 'points' || a.type !== 'cardinal' || b.type !== 'cardinal' || a.idle || b.idle) continue;
    if (a.form !== b.form || a.decimals !== b.decimals || !alike(a, b) || !closed.test(t[b.to]?.low ?? '') || !joint.test(t.slice(a.to, b.from).map((w) => w.low).join(' '))) continue;
    // Two alone may be two things ("for 20 minutes, 25 in the shade"): three make a list, and so does "respectively".
    const next = list[k + 1];
    const third = (a.sharedUnit && list[k - 2]?.unit === a.unit) || (next && !next.unit && next.type === 'cardinal' && next.form === b.form && next.decimals === b.decimals && joint.test(t.slice(b.to, next.from).map((w) => w.low).join(' ')) && closed.test(t[next.to]?.low ?? ''));
    if (third || t[b.to]?.low === 'respectively') Object.assign(b, { unit: a.unit, loose: a.loose, sharedUnit: true });
  }
}

/** Of one size: neither is twice the other. */
function alike(a: Mention, b: Mention): boolean {
  const [p, q] = [a.value.abs().toNumber(), b.value.abs().toNumber()];
  return Math.max(p, q) < 2 * Math.min(p, q);
}
