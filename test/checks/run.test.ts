// What is the same for all checks: acceptance, severities, thresholds of the record; and what a sound record hears.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checks, checksTable, describeCheck, runChecks, thresholds } from '../../pipeline/checks/index.js';
import type { Finding } from '../../pipeline/places/index.js';
import { yaml } from '../../pipeline/checks/check.js';
import { readRecord, told } from './read-example.js';

function found(record: string, others?: Finding[]): Finding[] {
  const { episode, facts } = readRecord(record);
  return runChecks(episode, facts, others);
}

const record = (tail: string, load = '67 67 75 °C') => yaml(`
  title: Example
  room: 21 °C
  setups: {bench: {name: Open bench}}
  workloads: {scene: {name: Test scene}}
  readings:
    - {for: {setup: bench, workload: scene}, temperature/core: {load: ${load}}}
  ${tail}
`);
const key = 'bench//scene/temperature/core/load';
const codes = (findings: Finding[]) => findings.map((f) => `${f.severity} ${f.code}${f.accepted ? ' accepted' : ''}`);

test('a sound record hears nothing', () => {
  const { episode, facts, findings } = readRecord(readFileSync(resolve(import.meta.dirname, '../episodes/sound/episode.yaml'), 'utf8'));
  expect(told(runChecks(episode, facts, findings))).toBe('');
});

describe('acceptance', () => {
  test('marks the finding, with reason and place, and does not take it away', () => {
    const [f, ...rest] = found(record(`accept: [{finding: runs-disagree, subject: ${key}, reason: a window was opened}]`));
    expect(rest).toEqual([]);
    expect(f).toMatchObject({ code: 'runs-disagree', severity: 'warning', accepted: { reason: 'a window was opened', place: { line: 7 } } });
  });

  test('of what is not found is a finding itself, and names the subject that is', () => {
    const all = found(record('accept: [{finding: runs-disagree, subject: bench//scene/temperature/core/laod, reason: none}]'));
    expect(codes(all)).toEqual(['warning runs-disagree', 'warning accept-unused']);
    expect(all[1]).toMatchObject({ suggest: key, place: { line: 7 } });
  });

  test('of findings of other rooms is judged only where these are handed over', () => {
    const other: Finding = { code: 'claim-disagrees', severity: 'error', place: { file: 'data/example/script.md', line: 3, column: 1, endLine: 3, endColumn: 4 }, message: 'Says 14 K, the record gives 12 K', subject: 'x' };
    const accepting = record('accept: [{finding: claim-disagrees, subject: x, reason: on purpose}]', '67 67 68 °C');
    expect(codes(found(accepting))).toEqual([]);
    expect(codes(found(accepting, []))).toEqual(['warning accept-unused']);
    expect(codes(found(accepting, [other]))).toEqual(['error claim-disagrees accepted']);
  });
});

describe('severities', () => {
  test('weigh a finding otherwise, or leave it out', () => {
    expect(codes(found(record('severities: {runs-disagree: error}')))).toEqual(['error runs-disagree']);
    expect(codes(found(record('severities: {runs-disagree: "off"}')))).toEqual([]);
  });
});

describe('thresholds', () => {
  test.each([
    ['runs-disagree-temperature: 10 K', []],
    ['runs-disagree-temperature: 18 °F', ['error threshold-value', 'warning runs-disagree']],
    ['runs-disagree-temperature: -1 K', ['error threshold-value', 'warning runs-disagree']],
    ['runs-disagree-temperature: wide', ['error threshold-value', 'warning runs-disagree']],
    ['runs-disagree-temprature: 10 K', ['error threshold-unknown', 'warning runs-disagree']],
    ['plausible-temperature: 0 °C to 60 °C', ['error unit-unlikely', 'warning runs-disagree']],
    ['plausible-temperature: 60 °C to 0 °C', ['error threshold-value', 'warning runs-disagree']],
    ['plausible-temperature: 60 °C', ['error threshold-value', 'warning runs-disagree']],
  ])('%s', (line, expected) => {
    expect(codes(found(record(`thresholds: {"${line.split(': ')[0]}": ${line.split(': ')[1]}}`))).sort()).toEqual(expected);
  });

  test('each has a source and is used by a check that says so', () => {
    const used = new Set(checks.flatMap((c) => c.thresholds ?? []));
    for (const [name, row] of Object.entries(thresholds)) {
      expect(row.source, name).toBeTruthy();
      expect([...used], name).toContain(name);
    }
  });
});

describe('runs, by their number', () => {
  // Range for two to five; the test of Grubbs at 1 % from six (1.4.2 of the oracles: with three it cannot exceed 1.1547).
  test.each([
    ['two far apart', '60 70 °C', true],
    ['two alike', '66 67 °C', false],
    ['three with one far', '60 60 66 °C', true],
    ['three in whole degrees', '60 61 62 °C', false],
    ['five spread evenly within the rule', '60 61 62 62 63 °C', false],
    ['seven with one outlier', '60 61 60 61 60 61 66 °C', true],
    ['seven that wander a little', '60 61 62 60 61 62 63 °C', false],
    ['seven that wander far', '55 66 58 63 52 68 60 °C', true],
  ])('%s', (_, load, disagree) => {
    expect(codes(found(record('', load)))).toEqual(disagree ? ['warning runs-disagree'] : []);
  });

  // Limits of Dixon's Q at 95 %: 0.829 of four, 0.710 of five; three runs would need 0.970, one 32 times as far off as the others lie apart.
  test.each([
    ['60.0 60.5 60.2 66.0 °C', /Run 4 is the odd one, an outlier by Dixon’s Q \(0\.92, limit 0\.83\)/],
    ['60.0 66.0 61.9 61.0 °C', /Run 2 is the odd one$/],
    ['60.0 60.5 60.2 59.9 66.0 °C', /Run 5 is the odd one, an outlier by Dixon’s Q \(0\.90, limit 0\.71\)/],
    ['60.0 60.1 66.0 °C', /Run 3 is the odd one$/],
  ])('the odd one of few: %s', (load, message) => expect(found(record('', load))[0]!.message).toMatch(message));

  test('two bad runs among twenty, which hide from Grubbs', () => {
    const load = `${Array.from({ length: 18 }, (_, i) => (60 + (i % 5) * 0.2).toFixed(1)).join(' ')} 75.0 75.5 °C`;
    expect(found(record('', load))[0]!.message).toMatch(/runs 19 and 20 \(75\.0, 75\.5\) are outliers among 20 runs by their distance from the median/);
  });

  test('a run that two changed digits explain is told so', () => {
    expect(found(record('', '67 67 76 °C'))[0]).toMatchObject({ slip: 'two digits have changed places', said: '67, 67, 76' });
  });
});

test('the table of checks has a line for each, and each can be described', () => {
  const lines = checksTable().trim().split('\n');
  expect(lines.length).toBe(checks.length + 2);
  for (const c of checks) expect(lines).toContain(`| \`${c.name}\` | ${c.severity} | ${c.says} |`);
  expect(describeCheck('runs-disagree')).toContain('runs-disagree-temperature: 3 K');
  expect(describeCheck('no-such-check')).toBeUndefined();
});
