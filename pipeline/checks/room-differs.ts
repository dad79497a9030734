// Things compared in rooms of different temperature.
import { isFact } from '../facts/index.js';
import { convert, Exact, mean as meanOf, show, unit } from '../quantities/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, isHot, type Measured, measured } from './measured.js';
import { nameOf, readingPlaces } from './words.js';

export const roomDiffers: Check = {
  name: 'room-differs',
  says: 'The room was warmer for one thing compared than for another.',
  why: 'A degree of room is about a degree of result. Compare rises over the room, or say how far the rooms differ.',
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
    const rooms = roomsOfTests(context);
    const setups = [...grouped(rooms, (r) => r.of.at.setup).values()].map((all) => ({ id: all[0]!.of.at.setup, all }));
    return [
      ...compare(setups.map(({ id, all }) => ({ subject: id, name: nameOf(context.facts.about, 'setup', id), all })), context),
      ...setups.flatMap(({ id, all }) => compare([...grouped(all, (r) => r.of.at.setting).entries()].map(([setting, some]) => ({
        subject: `${id}/${setting}`, name: nameOf(context.facts.about, 'setting', setting), all: some,
      })), context, id && nameOf(context.facts.about, 'setup', id))),
    ];
  },
};

interface Room {
  of: Measured;
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
