// A script against itself: each check is held to its own examples, and to silence on scripts that are true.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { proof, selfChecks } from '../../pipeline/claims/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readNames, readReadings } from '../../pipeline/records/index.js';
import { trialFolders } from '../trials/folders.js';
import { factsOf } from '../trials/score-in-process.js';

const nothing = new Facts(bareEpisode([], [], { file: '', line: 1, column: 1, endLine: 1, endColumn: 1 }));
const alone = (text: string) => proof(new Source('script.md', text), nothing);

for (const check of selfChecks) {
  describe(check.code, () => {
    test.each(check.right)('is silent: %s', (script) => {
      expect(alone(script).findings.map((f) => `${f.code} ${f.said}`)).toEqual([]);
    });
    test.each(check.wrong)('finds %s', (script, words) => {
      const { findings, mentions } = alone(script);
      expect(findings.map((f) => [f.code, f.said])).toEqual([[check.code, words]]);
      expect(mentions.some((m) => m.verdict === 'disagrees' && words.includes(m.text))).toBe(true);
    });
  });
}

const scripts = [
  ...trialFolders().map((name) => join(import.meta.dirname, '../trials', name)),
  ...readdirSync(join(import.meta.dirname, '../../data')).map((d) => join(import.meta.dirname, '../../data', d)).filter((d) => existsSync(join(d, 'script.md'))),
];

test.each(scripts)('nothing cannot be in the true script of %s', (folder) => {
  const { findings } = alone(readFileSync(join(folder, 'script.md'), 'utf8'));
  expect(findings.map((f) => `${f.place.line} ${f.message}`)).toEqual([]);
});

test.each(scripts.filter((s) => existsSync(join(s, 'names.csv'))))('nor beside its record, %s', (folder) => {
  const { findings } = proof(new Source('script.md', readFileSync(join(folder, 'script.md'), 'utf8')), factsOf(folder));
  expect(findings.filter((f) => f.code.startsWith('self-')).map((f) => `${f.place.line} ${f.message}`)).toEqual([]);
});

const card = new Source('readings.csv', `setup,setting,workload,measure,part,phase,run,value,unit
bench,stock,,temperature,core,idle,1,39.6,degC
bench,stock,scene,temperature,core,load,1,70.4,degC
`);
const names = new Source('names.csv', `kind,id,spoken
setup,bench,the bench;bench
`);

test('the record has the last word: 39.6 to 70.4 is 30.8, so 31 from 40 to 70 agrees through and through', () => {
  const facts = new Facts(bareEpisode(readReadings(card).value!, readNames(names).value!, card.place(0)));
  const script = 'On the bench the core temperature rose 31 degrees, from 40 at idle to 70 under load.';
  const { findings, mentions } = proof(new Source('script.md', script), facts);
  expect(findings).toEqual([]);
  expect(mentions.map((m) => m.verdict)).toEqual(['agrees', 'agrees', 'agrees']);
  expect(alone(script).findings.map((f) => f.message)).toEqual(['From 40 to 70 is 30, not 31 degrees; rounding may hide behind it, but listeners subtract.']);
});
