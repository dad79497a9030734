// What in an episode's facts answers to a sign.
import { type Facts, isFact, isIdle, type Key, splitKey, withFields } from '../facts/index.js';
import { convert, Exact, unit } from '../quantities/index.js';
import type { Sign, Where } from './rules.js';

/** Why a sign is given, as a clause ("the hotspot reached 94 °C"); undefined when it is not. */
export function evidence(facts: Facts, sign: Sign): string | undefined {
  switch (sign.sign) {
    case 'word': return word(facts, sign);
    case 'reading': return reading(facts, sign);
    case 'setting': return setting(facts, sign.kind);
    case 'raised-limit': return raisedLimit(facts);
    case 'offset': return offset(facts, sign);
  }
}

function texts(facts: Facts): { where: Where; text: string; label: string }[] {
  const { about } = facts;
  const names = (where: Where, map: ReadonlyMap<string, { id: string; name: string; spoken: string[] }>, label: string) =>
    [...map.values()].map((n) => ({ where, text: [n.name, n.id.replace(/[-_]/g, ' '), ...n.spoken].join(' | '), label: `${label} “${n.name}”` }));
  return [
    ...about.instruments.map((i) => ({ where: 'instrument' as const, text: i.name, label: `the instrument “${i.name}”` })),
    ...names('part', about.parts, 'the part'),
    ...names('measure', about.measures, 'the measure'),
    ...names('setup', about.setups, 'the setup'),
    ...about.system.map((p) => ({ where: 'system' as const, text: `${p.name} | ${p.detail ?? ''}`, label: `the parts list has “${p.name}”` })),
    ...about.method.map((m) => ({ where: 'method' as const, text: m.text, label: 'the method speaks of it' })),
  ];
}

function word(facts: Facts, { words, where }: Extract<Sign, { sign: 'word' }>): string | undefined {
  return texts(facts).find((t) => where.includes(t.where) && words.test(t.text))?.label;
}

function reading(facts: Facts, sign: Extract<Sign, { sign: 'reading' }>): string | undefined {
  const least = Exact.parse(sign.least)!;
  let highest: { value: Exact; because: string } | undefined;
  for (const key of facts.keys()) {
    const parts = splitKey(key);
    if (!parts || parts.measure === 'price') continue;
    const named = facts.about.parts.get(parts.part);
    const name = [parts.part.replace(/[-_]/g, ' '), named?.name ?? ''].join(' ');
    if ((sign.parts && !sign.parts.test(name)) || sign.notParts?.test(name)) continue;
    const fact = facts.value(key);
    if (!isFact(fact) || fact.kind === 'constant') continue;
    const value = convert(fact.spread?.max ?? fact.value, fact.unit, unit(sign.unit));
    if (!value || value.compare(least) < 0 || (highest && value.compare(highest.value) <= 0)) continue;
    highest = { value, because: `${named?.name ?? parts.part ?? parts.measure} averaged ${fact.shown}`.trim() };
  }
  return highest?.because;
}

function setting(facts: Facts, kind: string): string | undefined {
  const found = [...facts.about.settings.values()].find((s) => s.kind === kind || (s.kind === undefined && s.id.includes(kind)));
  return found && `the setting “${found.name}”`;
}

function raisedLimit(facts: Facts): string | undefined {
  const stock = [...facts.about.settings.values()].find((s) => s.kind === 'stock' || s.id === 'stock')?.id;
  if (stock === undefined) return undefined;
  for (const key of facts.keys()) {
    const parts = splitKey(key);
    if (!parts || parts.phase === 'limit' || isIdle(parts.phase) || !parts.setting || parts.setting === stock) continue;
    const [own, base] = [key, withFields(key, { setting: stock })].map((k) => limitOf(facts, k));
    if (own && base && own.unit.dimension === 'power' && own.unit.id === base.unit.id && own.value.compare(base.value) > 0) {
      return `the setting “${facts.about.settings.get(parts.setting)?.name ?? parts.setting}” allows ${own.shown} instead of ${base.shown}`;
    }
  }
  return undefined;
}

function limitOf(facts: Facts, key: Key) {
  const bound = facts.constantFor(key, 'limit');
  const fact = bound === undefined ? undefined : facts.value(bound);
  return isFact(fact) ? fact : undefined;
}

function offset(facts: Facts, { of, sense }: Extract<Sign, { sign: 'offset' }>): string | undefined {
  for (const key of facts.keys()) {
    const parts = splitKey(key);
    if (!parts || parts.phase !== 'offset') continue;
    const fact = facts.value(key);
    if (!isFact(fact) || fact.unit.dimension !== of) continue;
    if (fact.value.sign() === (sense === 'up' ? 1 : -1)) return `an offset of ${fact.shown}`;
  }
  return undefined;
}
