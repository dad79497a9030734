// Viewers subtract on the sofa: what the figures on the screen would give, where that is another number than the fact.
import { show } from '../quantities/index.js';
import { type Fact, withValue } from './fact.js';
import type { About } from './facts.js';
import type { Operation } from './operations.js';

/** "differences taken before rounding": the remark below a picture whose figures, as shown, would give another result; else empty. */
export function beforeRounding(shown: readonly Fact[]): string {
  const odd = shown.some((f) => f.sofa);
  const [one, many] = shown.some((f) => f.sofa && f.unit.id !== '%') ? ['difference', 'differences'] : ['percentage', 'percentages'];
  return odd ? `${shown.length > 1 ? many : one} taken before rounding` : '';
}

/** A sentence, or nothing where the rounded figures give the same rounded result. */
export function sofaNote(op: Operation, inputs: readonly Fact[], fact: Fact, about: About): string | undefined {
  if (!op.onTheSofa) return undefined;
  const seen = inputs.map((f) => withValue(f, f.value.round(f.decimals)));
  if (seen.every((f, i) => f.value.equals(inputs[i]!.value))) return undefined;
  const result = op.run(seen, fact.variant, about);
  if ('why' in result || result.value.round(fact.decimals).equals(fact.value.round(fact.decimals))) return undefined;
  return `${result.formula} would give ${show(result.value, fact.unit, fact.decimals)}; taken before rounding it is ${fact.shown}`;
}
