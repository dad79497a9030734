// A number that is right for another quantity of the same thing, and has got the wrong unit: "66.6 nits" where the power is 66.6 watts.
import { type Fact, type Facts, isFact, type Key, splitKey } from '../facts/index.js';
import { show } from '../quantities/index.js';
import { what } from './naming.js';
import type { Said, Slip } from './slip.js';

/** Fewer digits than this are right for something by chance. */
const digits = 2;

/** For a reading, or a difference between two, of the same setup, setting, workload; undefined where the unit said is that of a like quantity. */
export function otherQuantity(said: Said, fact: Fact, facts: Facts): Slip | undefined {
  if (!said.unit || said.value.abs().toFixed(said.decimals).replace(/[.]|^0+/g, '').length < digits) return undefined;
  const [own, base] = [splitKey(fact.keys[0] ?? ''), splitKey(fact.against[0] ?? '')];
  if (!own || (fact.kind !== 'mean' && fact.kind !== 'difference' && fact.kind !== 'rise') || (fact.kind !== 'mean' && !base)) return undefined;
  const like = (at: typeof own, key: Key): boolean => { const other = splitKey(key); return other !== undefined && (['setup', 'setting', 'workload'] as const).every((f) => other[f] === at[f]); };
  const keys = facts.keys();
  for (const key of keys) {
    if (!like(own, key)) continue;
    const at = splitKey(key)!;
    const beside = base && keys.find((k) => { const b = splitKey(k)!; return k !== key && like(base, k) && b.measure === at.measure && b.part === at.part && (b.phase === at.phase || base.phase !== own.phase); });
    if (base && !beside) continue;
    const other = beside ? facts.derive('difference', [key, beside]) : facts.value(key);
    if (!isFact(other) || other.unit.dimension === said.unit.dimension || !other.value.abs().round(said.decimals).equals(said.value.abs())) continue;
    return { kind: 'wrong-unit', says: `the number is right for ${what(facts.about, key)}: ${show(said.value.abs(), other.unit, said.decimals)}`, unit: other.unit, gives: other };
  }
  return undefined;
}
