// The fact that a writer names: an id, a plain key, or a kind and its operands.
import { type Fact, type FactKind, factKinds, type Facts, isFact, type Key, readId, splitKey } from '../facts/index.js';
import { nearest } from '../places/index.js';

/** `why` is a whole clause and names the nearest thing that there is; `suggest` is what to write instead where it is clear. */
export function factNamed(facts: Facts, words: readonly string[]): { fact: Fact } | { why: string; suggest?: string } {
  const [first = '', ...rest] = words;
  if (rest.length) {
    const kinds: readonly string[] = factKinds;
    const [kind = '', variant = ''] = first.split('.');
    if (!kinds.includes(kind)) return { why: `"${kind}" is no kind of fact${hint(nearest(kind, kinds))}` };
    return made(facts, facts.derive(kind as FactKind, [...rest], variant), first, rest);
  }
  if (splitKey(first)) return made(facts, facts.value(first), first, [first]);
  const id = readId(first);
  if (!id) {
    const near = nearest(first, facts.keys());
    return { why: `"${first}" is neither a fact's id nor a reading's key${hint(near)}`, ...(near && { suggest: near }) };
  }
  return made(facts, facts.get(first), first, id.operands);
}

function made(facts: Facts, fact: ReturnType<Facts['value']> | undefined, said: string, operands: readonly string[]): { fact: Fact } | { why: string; suggest?: string } {
  if (isFact(fact)) return { fact };
  const known = facts.keys();
  const missing = operands.flatMap((o) => leaves(o)).find((key) => splitKey(key) && facts.readings(key).length === 0);
  const near = missing && nearestKey(missing, known);
  const why = missing ? `the record has no reading of ${missing}${hint(near)}` : `"${said}" cannot be derived: ${fact?.why ?? 'it is no fact'}`;
  return { why, ...(near && said.includes(missing!) && { suggest: said.replace(missing!, near) }) };
}

/** The plain keys inside an operand. */
function leaves(operand: string): Key[] {
  if (operand.startsWith('(')) return readId(operand.slice(1, -1))?.operands.flatMap(leaves) ?? [];
  return operand.startsWith('=') ? [] : [operand.split('#')[0]!];
}

/** The known key that differs in the fewest fields; among those the one spelled most alike. */
function nearestKey(key: Key, known: readonly Key[]): Key | undefined {
  const at = key.split('/');
  const differing = (k: Key) => k.split('/').filter((f, i) => f !== at[i]).length;
  const least = Math.min(...known.map(differing));
  const close = known.filter((k) => differing(k) === least);
  return least > 3 ? nearest(key, known) : nearest(key, close) ?? close[0];
}

function hint(near: string | undefined): string {
  return near ? `; did you mean ${near}?` : '';
}
