// The right words in the writer's own form, where there is just one way to put it right.
import { unit } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import type { Slip } from '../slips/index.js';
import { inUnit, rightNumber } from './number.js';
import { rightPlace } from './rank.js';
import { rightRatio } from './ratio.js';
import { isFair, type Told } from './told.js';

/**
 * What to write instead of `text`, which says `m` where the record gives `told`; `after` is what follows it. A number that is right in
 * another unit keeps its digits. Undefined where the size is right and the words beside it are not, or where one form alone cannot be told.
 */
export function suggestion(m: Mention, text: string, told: Told, slip: Slip | undefined, after = ''): string | undefined {
  const { fact, sign } = told;
  if (m.type === 'ordinal' || m.type === 'superlative') return rightPlace(m, text, told);
  if (slip?.unit && isFair({ ...m, unit: slip.unit, loose: false } as Mention, slip.gives ? { ...told, fact: slip.gives } : told)) {
    const other = inUnit(m, text, slip.unit);
    if (other !== undefined && other !== text) return other;
  }
  // "12 percent" where it is 12 points of something: the number stays, and what it is of is said.
  const share = m.unit?.id === '%' && slip?.kind === 'points-for-percent' ? 'points' : m.unit?.id === 'points' && slip?.kind === 'percent-for-points' ? '%' : undefined;
  if (share) return inUnit(m, text, unit(share));
  if (sign !== 0 && fact.value.sign() !== 0 && fact.value.sign() !== sign) return undefined;
  if (m.type === 'multiplier' || (m.type === 'fraction' && !m.unit)) return rightRatio(m, text, told, after);
  const put = rightNumber(m, text, told);
  return put === text ? undefined : put;
}
