// Facts as trees of keys, so that a comparison can be carried over: "twice what the overclock adds".
import { type Fact, type FactKind, type Facts, isFact, type Key } from '../facts/index.js';
import { type Cell, type Grid, moved } from './grid.js';

export interface Term {
  kind: FactKind;
  variant?: string;
  args: readonly (Key | Term)[];
}

export function valueOf(key: Key): Term {
  return { kind: 'mean', args: [key] };
}

export function sameTerm(a: Key | Term, b: Key | Term): boolean {
  if (a === b || typeof a === 'string' || typeof b === 'string') return a === b;
  return a.kind === b.kind && a.variant === b.variant && a.args.length === b.args.length && a.args.every((x, i) => sameTerm(x, b.args[i]!));
}

export function evaluate(facts: Facts, term: Term): Fact | undefined {
  if (term.kind === 'mean' && term.args.length === 1 && typeof term.args[0] === 'string') {
    const plain = term.args[0].includes('#') ? facts.derive('raw', [term.args[0]]) : facts.value(term.args[0]);
    return isFact(plain) ? plain : undefined;
  }
  const operands: string[] = [];
  for (const a of term.args) {
    if (typeof a === 'string') operands.push(a);
    else {
      const inner = evaluate(facts, a);
      if (!inner) return undefined;
      operands.push(a.kind === 'mean' && a.args.length === 1 ? (a.args[0] as string) : `(${inner.id})`);
    }
  }
  const made = facts.derive(term.kind, operands, term.variant ?? '');
  return isFact(made) ? made : undefined;
}

/** The same term about other things; undefined where the record has no such reading or nothing would change. What the term itself compares with stays. */
export function substitute(g: Grid, term: Term, change: ReadonlyMap<number, string>): Term | undefined {
  const first = firstCell(g, term);
  return first && replaced(g, term, change, first);
}

function replaced(g: Grid, term: Term, change: ReadonlyMap<number, string>, first: Cell): Term | undefined {
  let differs = false;
  const args: (Key | Term)[] = [];
  for (const a of term.args) {
    if (typeof a !== 'string') {
      const inner = replaced(g, a, change, first);
      if (inner) differs = true;
      args.push(inner ?? a);
      continue;
    }
    const cell = g.byKey.get(a);
    const own = cell && new Map([...change].filter(([i]) => cell.at[i] === first.at[i]));
    const other = cell && own!.size ? moved(g, cell, own!) : undefined;
    if (other && other.key !== a) { differs = true; args.push(other.key); } else args.push(a);
  }
  // Two that come to be the same one are nothing to compare.
  if (args.length === 2 && args[0] === args[1] && term.args[0] !== term.args[1]) return undefined;
  return differs ? { ...term, args } : undefined;
}

export function firstCell(g: Grid, term: Term): Cell | undefined {
  const a = term.args[0];
  return a === undefined ? undefined : typeof a === 'string' ? g.byKey.get(a) : firstCell(g, a);
}
