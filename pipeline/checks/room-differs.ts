// Things compared in rooms of different temperature.
import { isFact } from '../facts/index.js';
import type { Place } from '../places/index.js';
import { convert, Exact, mean as meanOf, show, unit } from '../quantities/index.js';
import { type Key, type KeyParts, splitKey } from '../records/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, isHot, isRoom, type Measured, measured } from './measured.js';
import { nameOf, readingPlaces, tell } from './words.js';

export const roomDiffers: Check = {
  name: 'room-differs',
  says: 'The room was warmer for one thing compared than for another, on this day or on that of an earlier episode.',
  why: 'A degree of room is about a degree of result. Compare rises over the room, correct to one room (`reference room: 21 °C`), or say how far the rooms differ. A temperature quoted from an earlier episode needs the room of that day beside it.',
  severity: 'warning',
  thresholds: ['room-differs'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, temperature/core: {load: 67 67 68 °C}, temperature/room: {load: 21.0 21.1 21.0 °C}}
      - {for: {setup: case, workload: scene}, temperature/core: {load: 73 74 73 °C}, temperature/room: {load: 21.2 21.3 21.2 °C}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, temperature/core: {load: 67 67 68 °C}, temperature/room: {load: 21.0 21.1 21.0 °C}}
      - {for: {setup: case, workload: scene}, temperature/core: {load: 73 74 73 °C}, temperature/room: {load: 23.2 23.3 23.2 °C}} # expect
  `) },
  run(context) {
    const rooms = [...roomsOfTests(context), ...roomsOfQuotes(context)];
    const setups = [...grouped(rooms, (r) => r.of.at.setup).values()].map((all) => ({ id: all[0]!.of.at.setup, all }));
    return [
      ...withoutRoom(context),
      ...compare(setups.map(({ id, all }) => ({ subject: id, name: nameOf(context.facts.about, 'setup', id), all })), context),
      ...setups.flatMap(({ id, all }) => compare([...grouped(all, (r) => r.of.at.setting).entries()].map(([setting, some]) => ({
        subject: `${id}/${setting}`, name: nameOf(context.facts.about, 'setting', setting), all: some,
      })), context, id && nameOf(context.facts.about, 'setup', id))),
    ];
  },
};

interface Room {
  of: Pick<Measured, 'at' | 'key'>;
  celsius: Exact;
  readings: Measured['readings'];
}

/** The room of each test that has a temperature, once a test. */
function roomsOfTests({ facts }: Context): Room[] {
  const tests = grouped(measured(facts).filter(isHot), ({ at }) => `${at.setup}/${at.setting}/${at.workload}/${at.phase}`);
  return [...tests.values()].flatMap(([of]) => {
    const key = facts.roomFor(of!.key);
    const room = key && facts.value(key);
    const celsius = room && isFact(room) ? convert(room.value, room.unit, unit('degC')) : undefined;
    return celsius && room && isFact(room) ? [{ of: of!, celsius, readings: room.readings }] : [];
  });
}

/** Temperatures of earlier episodes, each as a test of its own day. */
function quotedHot({ episode, facts }: Context): { key: Key; at: KeyParts; place: Place; from: string }[] {
  return episode.quotes.flatMap(({ as: key, place, episode: from }) => {
    const at = splitKey(key);
    const fact = facts.value(key);
    return at && !isRoom(at) && isFact(fact) && fact.unit.dimension === 'temperature' ? [{ key, at, place, from }] : [];
  });
}

function roomsOfQuotes(context: Context): Room[] {
  const { facts } = context;
  const tests = grouped(quotedHot(context), ({ at }) => `${at.setup}/${at.setting}/${at.workload}/${at.phase}`);
  return [...tests.values()].flatMap(([of]) => {
    const key = roomOfQuote(facts, of!.key);
    const room = key && facts.value(key);
    const celsius = room && isFact(room) ? convert(room.value, room.unit, unit('degC')) : undefined;
    return celsius && room && isFact(room) ? [{ of: of!, celsius, readings: room.readings }] : [];
  });
}

/** Its own quoted room: that of this episode was another day's. */
function roomOfQuote(facts: Context['facts'], key: Key): Key | undefined {
  const room = facts.roomFor(key);
  return room !== undefined && facts.isQuoted(room) ? room : undefined;
}

/** Quoted temperatures that have none, once an episode; only where there is something of this day to compare with. */
function withoutRoom(context: Context): Report[] {
  const bare = quotedHot(context).filter(({ key }) => !roomOfQuote(context.facts, key));
  if (bare.length === 0 || !measured(context.facts).some(isHot)) return [];
  return [...grouped(bare, (b) => b.from).values()].map(([first]) => ({
    place: first!.place, subject: first!.key,
    message: `${tell(context.facts.about, first!.key)} is quoted from ${first!.from} without the room of that day; how much of a difference is the room’s cannot be told`,
    suggest: 'quote the room temperature of that test as well',
  }));
}

/** Each against the first. */
function compare(groups: { subject: string; name: string; all: Room[] }[], { limits }: Context, within = ''): Report[] {
  const [first, ...others] = groups.map((g) => ({ ...g, celsius: meanOf(g.all.map((r) => r.celsius)) }));
  if (!first) return [];
  const far = others.map((o) => ({ ...o, off: o.celsius.minus(first.celsius) })).filter(({ off }) => off.abs().compare(limits.exact('room-differs')) > 0);
  if (within) return far.length ? [report(far.reduce((a, b) => (b.off.abs().compare(a.off.abs()) > 0 ? b : a)), first, ` in ${within}`)] : [];
  return far.map((o) => report(o, first, ''));
}

function report(o: { subject: string; name: string; all: Room[]; celsius: Exact; off: Exact }, first: { name: string; all: Room[]; celsius: Exact }, where: string): Report {
  const degrees = (x: Exact): string => show(x, unit('degC'), 1);
  const adds = o.off.round(1).equals(o.celsius.round(1).minus(first.celsius.round(1)));
  return {
    place: o.all[0]!.readings[0]!.place, subject: o.subject, said: degrees(o.celsius), recorded: degrees(first.celsius), derivation: `${degrees(o.celsius)} − ${degrees(first.celsius)}`,
    message: `the room was ${show(o.off.abs(), unit('K'), 1)} ${o.off.sign() > 0 ? 'warmer' : 'cooler'} for ${o.name} than for ${first.name}${where}${adds ? ` (${degrees(o.celsius)} and ${degrees(first.celsius)})` : ''}`,
    related: readingPlaces(first.all[0]!.readings.slice(0, 1), () => `the room for ${first.name}`),
  };
}
