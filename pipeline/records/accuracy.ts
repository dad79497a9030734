// What an instrument's sheet promises, as it is printed there: "±1 %", "±0.5 °C", "±(0.5 % + 2 digits)", "±1 % of range 3000 W".
import { Exact, type Quantity, readNumber, readQuantity, unit } from '../quantities/index.js';

/** Limits of error, all of which may apply at once. */
export interface Limits {
  /** Of the reading: 0.01 for ±1 %. */
  share: Exact;
  /** In units of differences: 0.5 K, 1 % of 3000 W. */
  constant: Quantity[];
  /** Steps of the last digit. */
  digits: Exact;
}

const none = /^(?:|-|–|none|n\/?a|unknown|not (?:stated|known|specified|given)|unspecified)$/i;
const hundred = Exact.of(100);

/** Undefined where the text says that nothing is stated; `why` in words where it cannot be read. */
export function readAccuracy(text: string): Limits | { why: string } | undefined {
  if (none.test(text.trim())) return undefined;
  const limits: Limits = { share: Exact.zero, constant: [], digits: Exact.zero };
  for (const term of text.replace(/[()[\]]/g, ' ').split(/±|\+\/-|\+-|\s\+\s?|\bplus\b|\band\b/i)) {
    const why = term.trim() === '' ? undefined : take(term.trim(), limits);
    if (why) return { why };
  }
  return limits;
}

function take(term: string, limits: Limits): string | undefined {
  const form = 'write it like ±1 %, ±0.5 °C, ±(0.5 % + 2 digits), ±1 % of range 3000 W, or "not stated"';
  const digits = /^([\d.]+)\s*(?:digits?|counts?|dgts?|lsd|steps?)$/i.exec(term);
  const share = /^([\d.]+)\s*(?:%|percent|per cent)\s*((?:of\b|reading|rdg|full|range|span|fs|f\.s).*|)$/i.exec(term);
  const plain = readNumber(digits?.[1] ?? share?.[1] ?? '');
  if (digits) {
    if (!plain) return `"${digits[1]}" is not a number; ${form}`;
    limits.digits = limits.digits.plus(plain.value);
    return undefined;
  }
  if (share) {
    if (!plain) return `"${share[1]}" is not a number; ${form}`;
    const part = plain.value.over(hundred);
    const of = share[2]!.replace(/^of\s+(?:the\s+)?/i, '').trim();
    if (/^(?:reading|value|measured value|rdg\.?|)$/i.test(of)) {
      limits.share = limits.share.plus(part);
      return undefined;
    }
    const range = /^(?:(?:full[ -]?scale|range|span|fs|f\.s\.)\s*(?:of|:)?\s*)?(.*)$/i.exec(of)![1]!;
    if (!range) return `"${term}" does not say which range; write it like ±1 % of range 3000 W`;
    const whole = readQuantity(range);
    if ('why' in whole) return `"${range}" is no range: ${whole.why}; ${form}`;
    limits.constant.push(asDifference({ ...whole.quantity, value: whole.quantity.value.times(part) }));
    return undefined;
  }
  if (!/\d/.test(term)) return `"${term}" is no limit of error; ${form}`;
  const constant = readQuantity(term);
  if ('why' in constant) return `"${term}" cannot be read (${constant.why}); ${form}`;
  if (constant.quantity.value.sign() < 0) return `"${term}" is negative; ${form}`;
  limits.constant.push(asDifference(constant.quantity));
  return undefined;
}

/** An error of 0.5 °C is one of 0.5 K. */
function asDifference(q: Quantity): Quantity {
  return q.unit.difference ? { ...q, unit: unit(q.unit.difference) } : q;
}

/** "95 %" as 0.95; undefined for anything that is no level of confidence. */
export function readLevel(text: string): number | undefined {
  const m = /^([\d.]+)\s*(?:%|percent)$/.exec(text.trim());
  const level = m ? Number(m[1]) / 100 : NaN;
  return level >= 0.5 && level < 1 ? level : undefined;
}
