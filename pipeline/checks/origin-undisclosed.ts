// Where a product came from.
import { type Check, yaml } from './check.js';

export const originUndisclosed: Check = {
  name: 'origin-undisclosed',
  says: 'A product does not say how it was come by.',
  why: 'Viewers have a right to know whether a product was bought, lent or sponsored; in many places the law says so too.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {a: {name: Ash, kind: product, obtained: bought}}
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups:
      a: {name: Ash, kind: product} # expect
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  run: ({ episode }) => [...episode.setups.values()].filter((s) => s.kind === 'product' && !s.obtained).map((s) => ({ place: s.place, subject: s.id, message: `how ${s.name} was come by is not said; add \`obtained: bought\`, lent, sponsored, given or own` })),
};
