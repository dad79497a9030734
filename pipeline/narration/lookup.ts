// The fact that a writer names: an id, a plain key, or a kind and its operands.
import { type Fact, type FactKind, factKinds, type Facts, isFact, readId, splitKey, subjectKey, suggestIds } from '../facts/index.js';
import { nearest } from '../places/index.js';

/** `why` is a whole clause and names the nearest ids; `suggest` is the likeliest of them. */
export function factNamed(facts: Facts, words: readonly string[]): { fact: Fact } | { why: string; suggest?: string } {
  const [first = '', ...rest] = words;
  const kinds: readonly string[] = factKinds;
  const [kind = '', variant = ''] = first.split('.');
  if (rest.length && !kinds.includes(kind)) {
    const near = nearest(kind, kinds);
    return { why: `"${kind}" is no kind of fact${near ? `; did you mean "${near}"?` : `; there are ${kinds.join(', ')}`}` };
  }
  const made = rest.length ? facts.derive(kind as FactKind, rest.map((o) => facts.meant(o)), variant) : facts.get(first) ?? (splitKey(first) ? facts.value(facts.meant(first)) : undefined);
  if (isFact(made)) return { fact: made };
  const said = rest.length ? `${first}:${rest.join('~')}` : first;
  const why = made ? `"${said}" cannot be derived: ${made.why}` : `there is no fact "${said}"`;
  const known = made && readId(said)?.operands.every((o) => facts.readings(subjectKey(o) ?? '').length > 0);
  const near = known ? [] : suggestIds(facts, said, 3);
  return { why: near.length ? `${why}; nearest: ${near.join(', ')}` : why, ...(near[0] && { suggest: near[0] }) };
}
