// A ranking or a "better" that rests on less than the spread of the runs.
import type { Fact } from '../facts/index.js';
import { convert } from '../quantities/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, isRoom, type Measured, measured, quantityOf } from './measured.js';
import { rangeOf } from './run-spread.js';
import { weighStated } from './stated.js';
import { derivation, listed, nameOf, readingPlaces, runsOf, tell, tellDifference } from './words.js';

export const withinSpread: Check = {
  name: 'within-spread',
  says: 'A stated difference or rank, or a place in a roundup, rests on less than the spread of the runs.',
  why: 'Where the runs of two things overlap, another day may turn their order round. Say that they are level, or measure more often. Stated comparisons are warned of; neighbours in the ranking of products are noted.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {a: {name: Ash}, b: {name: Birch}}
    workloads: {scene: {name: Test scene}}
    measures: {temperature: {better: lower}}
    readings:
      - {for: {setup: a, workload: scene}, temperature/core: {load: 61 61 62 °C}}
      - {for: {setup: b, workload: scene}, temperature/core: {load: 66 67 66 °C}}
    stated:
      - {difference: [b//scene/temperature/core/load, a//scene/temperature/core/load], is: 5 K}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {a: {name: Ash}, b: {name: Birch}}
    workloads: {scene: {name: Test scene}}
    measures: {temperature: {better: lower}}
    readings:
      - {for: {setup: a, workload: scene}, temperature/core: {load: 61 63 62 °C}}
      - {for: {setup: b, workload: scene}, temperature/core: {load: 62 64 63 °C}}
    stated:
      - {difference: [b//scene/temperature/core/load, a//scene/temperature/core/load], is: 1 K} # expect
  `) },
  run: (context) => [...stated(context), ...roundups(context)],
};

function stated(context: Context): Report[] {
  const { facts } = context;
  return weighStated(context).flatMap(({ stated: s, fact }) => {
    if (!fact || !['difference', 'percent_change', 'ratio', 'points', 'rank', 'per_watt'].includes(fact.kind) || s.quantity.value.sign() === 0) return [];
    const [subject, ...others] = s.operands.map((o) => measured(facts).find((m) => m.key === o));
    const level = others.find((o) => subject && o && overlap(subject, o));
    if (!subject || !level) return [];
    return [{
      place: s.place, subject: fact.id, said: fact.shown, recorded: `${runsOf(subject.readings)} and ${runsOf(level.readings)}`, derivation: derivation(fact),
      message: `${s.where ? `${s.where}: ` : ''}${tell(facts.about, subject.key)} is told apart from ${tellDifference(facts.about, level.key, subject.key)}, and their runs overlap (${runsOf(subject.readings)} and ${runsOf(level.readings)})`,
      suggest: 'level within the spread of the runs', related: [...readingPlaces(subject.readings), ...readingPlaces(level.readings)],
    }];
  });
}

/** Neighbours in the ranking of products, one note a quantity. */
function roundups({ episode, facts }: Context): Report[] {
  const fit = measured(facts).filter(({ at, mean }) => mean && !isRoom(at) && episode.setups.get(at.setup)?.kind === 'product' && (episode.measures.get(at.measure)?.better ?? 'neither') !== 'neither');
  return [...grouped(fit, ({ at }) => quantityOf(at)).entries()].flatMap(([quantity, all]) => {
    const level = [...grouped(all, ({ at }) => `${at.setting}/${at.workload}`).values()].filter((g) => g.length >= 3).flatMap((group) => {
      const order = [...group].sort((a, b) => a.mean!.value.compare(convert(b.mean!.value, b.mean!.unit, a.mean!.unit) ?? b.mean!.value));
      return chains(order);
    });
    if (level.length === 0) return [];
    const names = (chain: Measured[]): string => `${listed(chain.map(({ at }) => nameOf(facts.about, 'setup', at.setup)))}${chain[0]!.at.setting ? ` (${nameOf(facts.about, 'setting', chain[0]!.at.setting)})` : ''}`;
    return [{
      severity: 'note' as const, place: level[0]![0]!.readings[0]!.place, subject: quantity,
      message: `${tell(facts.about, quantity)}: the order of ${level.map(names).join('; of ')} rests on less than the spread of their runs`,
      related: level.flat().slice(0, 6).map((m) => ({ place: m.readings[0]!.place, label: `${tell(facts.about, m.key)}: ${runsOf(m.readings)}` })),
    }];
  });
}

/** Neighbours in rank whose runs overlap, strung together. */
function chains(order: Measured[]): Measured[][] {
  const found: Measured[][] = [];
  order.slice(1).forEach((b, i) => {
    const a = order[i]!;
    if (!overlap(a, b) || equal(a, b)) return;
    if (found.at(-1)?.at(-1) === a) found.at(-1)!.push(b);
    else found.push([a, b]);
  });
  return found;
}

function overlap(a: Measured, b: Measured): boolean {
  if (a.readings.length < 2 || b.readings.length < 2 || a.mean?.unit.id !== b.mean?.unit.id || !a.mean) return false;
  const [x, y] = [rangeOf(a.readings), rangeOf(b.readings)];
  return x.low.compare(y.high) <= 0 && y.low.compare(x.high) <= 0;
}

function equal(a: Measured, b: Measured): boolean {
  return (a.mean as Fact).value.equals((b.mean as Fact).value);
}
