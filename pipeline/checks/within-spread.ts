// A ranking or a "better" that rests on less than the spread of the runs.
import { type Fact, type Facts, isFact, judge, matterRows, type MatterName, runsNeeded, subjectKey, tellOutcome, tellRuns, tooClose } from '../facts/index.js';
import { convert } from '../quantities/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, isRoom, type Measured, measured, quantityOf } from './measured.js';
import { weighStated } from './stated.js';
import { derivation, listed, nameOf, readingPlaces, runsOf, tell, tellDifference } from './words.js';

export const withinSpread: Check = {
  name: 'within-spread',
  says: 'A stated difference or rank, or a place in a roundup, cannot be told from its readings.',
  why: 'Where the 95 % interval of a difference takes in zero, another day may turn the order round. It is made of the scatter of the runs, the steps and the accuracy of the instruments; what one instrument reads on both sides cancels. Say that they are level, or measure as often as the finding tells. Stated comparisons are warned of; neighbours in the ranking of products are noted. A difference that lies wholly within what matters is no matter of doubt: it is about none.',
  severity: 'warning',
  thresholds: Object.keys(matterRows) as MatterName[],
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

const kinds: ReadonlySet<string> = new Set(['difference', 'rise', 'percent_change', 'ratio', 'points', 'per_watt', 'rank']);

function stated({ episode, facts }: Context): Report[] {
  return weighStated({ episode, facts } as Context).flatMap(({ stated: s, fact }) => {
    if (!fact || !kinds.has(fact.kind) || s.quantity.value.sign() === 0) return [];
    const open = fact.kind === 'rank' || fact.kind === 'per_watt' ? openAgainst(facts, s.operands) : openIn(facts, fact, s.operands);
    if (!open) return [];
    return [{
      place: s.place, subject: fact.id, said: fact.shown, recorded: open.interval, derivation: derivation(fact),
      message: `${s.where ? `${s.where}: ` : ''}${open.of} is told apart from ${open.from}, and the readings cannot tell them apart: ${open.interval}; ${open.runs}`,
      suggest: 'level within the spread of the runs', related: readingPlaces(fact.readings),
    }];
  });
}

interface Open {
  of: string;
  from: string;
  interval: string;
  runs: string;
}

/** What keeps a difference from being told; single runs are no news, they stand in the record as such. */
function openIn(facts: Facts, fact: Fact, operands: readonly string[]): Open | undefined {
  const told = tellOutcome(facts, fact);
  const judged = judge(facts, fact);
  if (told?.outcome !== 'undecided' || judged?.half95 === undefined) return undefined;
  const [a, b] = operands.map((o) => subjectKey(o) ?? '') as [string, string];
  return { of: tell(facts.about, a), from: tellDifference(facts.about, b, a), interval: told.interval, runs: tellRuns(runsNeeded(facts, fact)?.runs) };
}

/** Of a rank, the first of the others that it cannot be told from. */
function openAgainst(facts: Facts, [subject, ...others]: readonly string[]): Open | undefined {
  for (const other of others) {
    const difference = facts.derive('difference', [subject!, other]);
    const open = isFact(difference) && difference.value.sign() !== 0 ? openIn(facts, difference, [subject!, other]) : undefined;
    if (open) return open;
  }
  return undefined;
}

/** Neighbours in the ranking of products, one note a quantity. */
function roundups({ episode, facts }: Context): Report[] {
  const fit = measured(facts).filter(({ at, mean }) => mean && !isRoom(at) && episode.setups.get(at.setup)?.kind === 'product' && (episode.measures.get(at.measure)?.better ?? 'neither') !== 'neither');
  return [...grouped(fit, ({ at }) => quantityOf(at)).entries()].flatMap(([quantity, all]) => {
    const level = [...grouped(all, ({ at }) => `${at.setting}/${at.workload}`).values()].filter((g) => g.length >= 3).flatMap((group) => {
      const order = [...group].sort((a, b) => a.mean!.value.compare(convert(b.mean!.value, b.mean!.unit, a.mean!.unit) ?? b.mean!.value));
      return chains(facts, order);
    });
    if (level.length === 0) return [];
    const names = (chain: Measured[]): string => `${listed(chain.map(({ at }) => nameOf(facts.about, 'setup', at.setup)))}${chain[0]!.at.setting ? ` (${nameOf(facts.about, 'setting', chain[0]!.at.setting)})` : ''}`;
    return [{
      severity: 'note' as const, place: level[0]![0]!.readings[0]!.place, subject: quantity,
      message: `${tell(facts.about, quantity)}: the order of ${level.map(names).join('; of ')} rests on less than the spread of their runs, or than matters`,
      related: level.flat().slice(0, 6).map((m) => ({ place: m.readings[0]!.place, label: `${tell(facts.about, m.key)}: ${runsOf(m.readings)}` })),
    }];
  });
}

/** Neighbours in rank that cannot be told apart or differ by nothing that matters, strung together. */
function chains(facts: Facts, order: Measured[]): Measured[][] {
  const found: Measured[][] = [];
  order.slice(1).forEach((b, i) => {
    const a = order[i]!;
    const close = tooClose(facts, a.mean!, b.mean!);
    if (!close || close === 'level' || close === 'single') return;
    if (found.at(-1)?.at(-1) === a) found.at(-1)!.push(b);
    else found.push([a, b]);
  });
  return found;
}
