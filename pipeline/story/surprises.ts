// What surprised: a setting that did the opposite of what such settings are for or nothing of it, and a cheaper product that did better.
import { type Fact, type Facts, isFact, nameOf, quantityName, type Setting, splitKey, tooClose } from '../facts/index.js';
import { between, counts, type Pair, pairs } from './changes.js';
import type { Observation } from './observation.js';

type Way = 'rises' | 'falls';

/** What each kind of setting is made to do; common practice, no published source. */
const expected: Partial<Record<NonNullable<Setting['kind']>, Readonly<Record<string, Way>>>> = {
  'power-limit': { power: 'falls', temperature: 'falls', noise: 'falls', frequency: 'falls', frame_rate: 'falls' },
  undervolt: { power: 'falls', temperature: 'falls', noise: 'falls' },
  overclock: { frequency: 'rises', frame_rate: 'rises', power: 'rises' },
};

/** What a kind of setting is for: that it does nothing of it is a surprise too. */
const purpose: Partial<Record<NonNullable<Setting['kind']>, string>> = { 'power-limit': 'power', undervolt: 'power', overclock: 'frame_rate' };

export function surprises(facts: Facts): Observation[] {
  const told = new Set<string>();
  return [...pairs(facts).flatMap((p) => ofSetting(facts, p) ?? []), ...cheaperAndBetter(facts)].sort((a, b) => b.weight - a.weight).filter(({ measure, part, fact }) => {
    // The same setting in another setup is the same surprise.
    const same = `${measure}/${part}/${splitKey(fact.subject)?.setting ?? ''}`;
    return !told.has(same) && told.add(same);
  });
}

function ofSetting(facts: Facts, pair: Pair): Observation | undefined {
  if (pair.field !== 'setting') return undefined;
  const at = splitKey(pair.key)!;
  const base = facts.about.settings.get(splitKey(pair.base)!.setting);
  const kind = facts.about.settings.get(at.setting)?.kind;
  const way = kind && expected[kind]?.[at.measure];
  if (!way || base?.kind !== 'stock') return undefined;
  const { difference, after, before } = pair;
  const name = quantityName(facts.about, at.measure, at.part);
  const common = { about: 'surprise' as const, measure: at.measure, part: at.part, fact: difference };
  const close = tooClose(facts, after, before);
  if (close) return purpose[kind] === at.measure && !sisterMoved(facts, pair) ? { ...common, weight: 1, why: `${name} shows no difference that ${close === 'matters' ? 'matters' : 'the runs can tell'} ${between(facts, pair)}` } : undefined;
  const went: Way = difference.value.sign() > 0 ? 'rises' : 'falls';
  const share = Math.abs(difference.value.toNumber() / (before.value.toNumber() || 1));
  return went === way ? undefined : { ...common, weight: 2 + share, why: `${name} ${went} ${between(facts, pair)}, against what such a setting is for` };
}

/** Whether another part of the same measure did what the setting is for (the average rate, where the low one did not). */
function sisterMoved(facts: Facts, { key, base }: Pair): boolean {
  return facts.sameBut(key, 'part').some((other) => {
    const [after, before] = [facts.value(other), facts.value(facts.sameBut(base, 'part').find((k) => splitKey(k)!.part === splitKey(other)!.part) ?? '')];
    return isFact(after) && isFact(before) && !tooClose(facts, after, before);
  });
}

/** Of all products with a price: the greatest step down in price that brought the first measure clearly up. */
function cheaperAndBetter(facts: Facts): Observation[] {
  const first = facts.keys().find((k) => counts(facts, k));
  const at = first === undefined ? undefined : splitKey(first)!;
  const better = at && facts.about.measures.get(at.measure)?.better;
  if (!first || !at || !better) return [];
  const rows = [first, ...facts.sameBut(first, 'setup').filter((k) => counts(facts, k))].flatMap((key): { key: string; value: Fact; price: Fact }[] => {
    const priceKey = facts.priceOf(splitKey(key)!.setup);
    const [value, price] = [facts.value(key), priceKey === undefined ? undefined : facts.value(priceKey)];
    return isFact(value) && isFact(price) ? [{ key, value, price }] : [];
  });
  const sign = better === 'higher' ? 1 : -1;
  const found = rows.flatMap((cheap) => rows.flatMap((dear) => {
    if (cheap === dear || cheap.price.unit.id !== dear.price.unit.id || cheap.price.value.compare(dear.price.value) >= 0) return [];
    const difference = facts.derive('difference', [cheap.key, dear.key]);
    if (!isFact(difference) || difference.value.sign() * sign <= 0 || tooClose(facts, cheap.value, dear.value)) return [];
    const saved = 1 - cheap.price.value.toNumber() / dear.price.value.toNumber();
    const names = [cheap, dear].map(({ key }) => nameOf(facts.about, 'setup', splitKey(key)!.setup));
    return [{ about: 'surprise' as const, measure: at.measure, part: at.part, fact: difference, weight: 1 + saved, why: `${names[0]} costs less than ${names[1]} (${cheap.price.shown} and ${dear.price.shown}) and does better: ${cheap.value.shown} against ${dear.value.shown}` }];
  }));
  return found.sort((a, b) => b.weight - a.weight).slice(0, 1);
}
