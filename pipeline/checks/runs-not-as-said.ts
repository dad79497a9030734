// The method promises another number of runs than there are.
import { type Check, yaml } from './check.js';
import { measured } from './measured.js';
import { mostCommon } from './run-counts-differ.js';
import { count } from './words.js';

const words = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const promise = new RegExp(`\\b(?:(?:mean|average|median) of|each(?: \\w+)?,?|in) (${words.join('|')}|\\d{1,2}) (?:\\w+ )?runs\\b|\\b(${words.join('|')}|\\d{1,2}) runs (?:each|per|of each|at each)\\b`, 'i');

export const runsNotAsSaid: Check = {
  name: 'runs-not-as-said',
  says: 'The method speaks of a number of runs that the record does not have.',
  why: 'The method is read aloud and shown on the conditions card; it must describe this record and not the last one.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    method: [Each figure is the mean of three runs.]
    setups: {a: {name: Ash}}
    readings:
      - {for: {setup: a}, power/wall: {idle: 40 41 40 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    method:
      - Each figure is the mean of five runs. # expect
    setups: {a: {name: Ash}}
    readings:
      - {for: {setup: a}, power/wall: {idle: 40 41 40 W}}
  `) },
  run({ episode, facts }) {
    const usual = mostCommon(measured(facts).map(({ key }) => facts.readings(key, { aside: true }).length));
    if (usual === 0) return [];
    return episode.method.flatMap(({ text, place }) => {
      const found = promise.exec(text);
      const word = found?.[1] ?? found?.[2];
      const said = word === undefined ? 0 : words.indexOf(word.toLowerCase()) + 1 || Number(word);
      if (said === 0 || said === usual) return [];
      return [{ place, subject: 'method', said: count(said, 'run'), recorded: count(usual, 'run'), message: `the method says ${count(said, 'run')}, most readings have ${count(usual, 'run')}` }];
    });
  },
};
