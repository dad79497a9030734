// Fact ids: `rise:open-bench/stock/scene/temperature/core/load~workload=,phase=idle`.
// After the subject each operand is written as what differs from the subject's key, a nested fact in brackets,
// or a literal after "=" (`=1000g`), so that ids stay short, stable and readable.
import { type Key, type KeyField, keyFields, splitKey, withFields } from '../records/index.js';
import { type FactKind, factKinds } from './fact.js';

export interface FactId {
  kind: FactKind;
  variant: string;
  /** Keys (`a/b/c/d/e/f`, `…#2` for one run), bracketed ids, or literals. */
  operands: string[];
}

/** The canonical id. Operands must be whole keys, bracketed ids or literals. */
export function writeId({ kind, variant, operands }: FactId): string {
  const subject = operands[0]!;
  const base = subjectKey(subject);
  return `${kind}${variant ? `.${variant}` : ''}:${subject}${operands.slice(1).map((o) => `~${short(o, base)}`).join('')}`;
}

/** Undefined when it is no id. Short operands come back as whole keys. */
export function readId(id: string): FactId | undefined {
  const m = /^([a-z_]+)(?:\.([a-z-]+))?:(.+)$/s.exec(id);
  if (!m || !(factKinds as readonly string[]).includes(m[1]!)) return undefined;
  const parts = splitOutside(m[3]!);
  if (!parts) return undefined;
  const base = subjectKey(parts[0]!);
  const operands = parts.map((p, i) => (i === 0 ? p : whole(p, base)));
  if (operands.some((o) => o === undefined || o === '')) return undefined;
  return { kind: m[1] as FactKind, variant: m[2] ?? '', operands: operands as string[] };
}

/** The key an operand is about: itself without its run, or the first leaf of a nested id. */
export function subjectKey(operand: string): Key | undefined {
  if (operand.startsWith('(')) {
    const inner = readId(operand.slice(1, -1));
    return inner && subjectKey(inner.operands[0]!);
  }
  return operand.startsWith('=') ? undefined : operand.split('#')[0];
}

function short(operand: string, base: Key | undefined): string {
  if (!base || /^[(=]/.test(operand) || operand.includes('#')) return operand;
  const a = splitKey(base);
  const b = splitKey(operand);
  if (!a || !b) return operand;
  const differs = keyFields.filter((f) => a[f] !== b[f]);
  if (differs.length === 0) return operand;
  const text = differs.map((f) => `${f}=${b[f]}`).join(',');
  return text.length < operand.length ? text : operand;
}

function whole(part: string, base: Key | undefined): string | undefined {
  if (/^[(=]/.test(part) || part.includes('/')) return part;
  if (!base) return undefined;
  const change: Partial<Record<KeyField, string>> = {};
  for (const piece of part.split(',')) {
    const [field, value] = piece.split('=');
    if (value === undefined || !(keyFields as readonly string[]).includes(field!)) return undefined;
    change[field as KeyField] = value;
  }
  return withFields(base, change);
}

function splitOutside(text: string): string[] | undefined {
  const parts: string[] = [];
  let depth = 0;
  let from = 0;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '(') depth++;
    else if (text[i] === ')') depth--;
    else if (text[i] === '~' && depth === 0) {
      parts.push(text.slice(from, i));
      from = i + 1;
    }
    if (depth < 0) return undefined;
  }
  if (depth) return undefined;
  parts.push(text.slice(from));
  return parts;
}
