// A price without a day.
import { type Check, yaml } from './check.js';
import { priced, told } from './priced.js';

export const priceUndated: Check = {
  name: 'price-undated',
  says: 'A price has no day on which it was seen.',
  why: 'Prices change by the week; frames per unit of money without a day cannot be checked by anyone.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {a: {name: Ash, kind: product, obtained: bought, price: 64 EUR, price date: 2026-03-01}}
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups:
      a: {name: Ash, kind: product, obtained: bought, price: 64 EUR} # expect
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  run: ({ episode }) => priced(episode.setups.values()).filter((s) => !s.price.date).map((s) => ({ place: s.price.place, subject: s.id, said: told(s), message: `the price of ${s.name} (${told(s)}) has no day; add \`price date:\`` })),
};
