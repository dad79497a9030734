// A price of long ago.
import { type Check, yaml } from './check.js';
import { priced } from './priced.js';

export const priceOld: Check = {
  name: 'price-old',
  says: 'A price was seen long before the episode, or after it.',
  why: 'A figure per unit of money is as old as its price.',
  severity: 'note',
  thresholds: ['price-age'],
  right: { record: yaml(`
    title: Right
    date: 2026-03-14
    setups: {a: {name: Ash, kind: product, obtained: bought, price: 64 EUR, price date: 2026-03-01}}
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  wrong: { record: yaml(`
    title: Wrong
    date: 2026-03-14
    setups:
      a: {name: Ash, kind: product, obtained: bought, price: 64 EUR, price date: 2025-03-01} # expect
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  run: ({ episode, limits }) => priced(episode.setups.values()).flatMap((s) => {
    const days = s.price.date && episode.date ? (Date.parse(episode.date) - Date.parse(s.price.date)) / 86_400_000 : NaN;
    if (!(days > limits.number('price-age') || days < 0)) return [];
    return [{ place: s.price.place, subject: s.id, said: s.price.date!, recorded: episode.date!, message: days < 0 ? `the price of ${s.name} was seen on ${s.price.date}, after the episode's ${episode.date}` : `the price of ${s.name} was seen on ${s.price.date}, ${days} days before the episode` }];
  }),
};
