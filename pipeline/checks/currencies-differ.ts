// Prices that cannot be compared.
import { type Check, yaml } from './check.js';
import { priced, told } from './priced.js';

export const currenciesDiffer: Check = {
  name: 'currencies-differ',
  says: 'Prices of things compared stand in different currencies.',
  why: 'Figures per unit of money in two currencies cannot be ranked.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups:
      a: {name: Ash, kind: product, obtained: bought, price: 64 EUR, price date: 2026-03-01}
      b: {name: Birch, kind: product, obtained: bought, price: 49 EUR, price date: 2026-03-01}
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups:
      a: {name: Ash, kind: product, obtained: bought, price: 64 EUR, price date: 2026-03-01}
      b: {name: Birch, kind: product, obtained: bought, price: 49 USD, price date: 2026-03-01} # expect
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  run: ({ episode }) => {
    const [first, ...rest] = priced(episode.setups.values());
    return rest.filter((s) => s.price.amount.unit.id !== first!.price.amount.unit.id).map((s) => ({
      place: s.price.place, subject: s.id, said: told(s), recorded: told(first!), message: `the price of ${s.name} is in ${s.price.amount.unit.many}, that of ${first!.name} in ${first!.price.amount.unit.many}`,
      related: [{ place: first!.price.place, label: first!.name }],
    }));
  },
};
