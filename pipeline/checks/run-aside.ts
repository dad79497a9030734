// Runs that do not count.
import { type Check, yaml } from './check.js';
import { grouped } from './measured.js';
import { count, readingPlaces, tell } from './words.js';

export const runAside: Check = {
  name: 'run-aside',
  says: 'A run was set aside; it is kept in the record and left out of every figure.',
  why: 'Leaving out a run is right when there was a reason, and has to be told with that reason.',
  severity: 'note',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, power/wall: {idle: 40 41 40 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, power/wall: {idle: 40 55 40 W}}
    aside:
      - {reading: bench///power/wall/idle, run: "2", reason: an update ran in the background} # expect
  `) },
  run({ episode, facts }) {
    const aside = episode.readings.filter((r) => r.aside);
    return [...grouped(aside, (r) => `${r.aside!.place.file}:${r.aside!.place.line}:${r.aside!.place.column} ${r.run}`).values()].map((all) => ({
      place: all[0]!.aside!.place, subject: all[0]!.key, said: `run ${all[0]!.run}`,
      message: `${tell(facts.about, all[0]!.key)}: run ${all[0]!.run} is set aside${all.length > 1 ? `, with ${count(all.length - 1, 'other reading')}` : ''}: ${all[0]!.aside!.reason}`,
      related: readingPlaces(all.slice(0, 5)),
    }));
  },
};
