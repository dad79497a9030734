// Readings that are kept but not averaged, and results that come from elsewhere.
import { type Facts, isFact, quantityName, splitKey } from '../facts/index.js';
import { show } from '../quantities/index.js';
import { whereShown } from './places-of.js';

export function asideRows(facts: Facts): { what: string; where: string; run: string; value: string; reason: string }[] {
  return facts.keys().flatMap((key) => facts.readings(key, { aside: true }).filter((r) => r.aside).map((r) => {
    const parts = splitKey(key)!;
    const { value, unit, decimals } = r.quantity;
    return { what: quantityName(facts.about, parts.measure, parts.part), where: whereShown(facts, parts), run: r.run, value: show(value, unit, decimals), reason: r.aside!.reason };
  }));
}

export function quoteRows(facts: Facts): { what: string; where: string; value: string; episode: string; fact: string }[] {
  return facts.about.quotes.flatMap((q) => {
    const parts = splitKey(q.as);
    const fact = facts.value(q.as);
    if (!parts || !isFact(fact)) return [];
    return [{ what: quantityName(facts.about, parts.measure, parts.part), where: whereShown(facts, parts), value: fact.shown, episode: q.episode, fact: q.fact }];
  });
}
