// Setups that have a price.
import { show } from '../quantities/index.js';
import type { Setup } from '../records/index.js';

export type Priced = Setup & { price: NonNullable<Setup['price']> };

export function priced(setups: Iterable<Setup>): Priced[] {
  return [...setups].filter((s): s is Priced => s.price !== undefined);
}

export function told({ price: { amount } }: Priced): string {
  return show(amount.value, amount.unit, amount.decimals);
}
