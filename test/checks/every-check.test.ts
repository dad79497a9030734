// Every check against its own two examples: silent on the right one, on the wrong one at exactly the marked lines.
import { describe, expect, test } from 'vitest';
import { checks, describeCheck, readLimits } from '../../pipeline/checks/index.js';
import type { Check, Example } from '../../pipeline/checks/index.js';
import { expected, readRecord, told } from './read-example.js';

function run(check: Check, { record, files }: Example) {
  const { episode, facts, findings } = readRecord(record, files);
  expect(told(findings.filter((f) => f.severity === 'error')), 'the reader takes the example').toBe('');
  return check.run({ episode, facts, limits: readLimits(episode).limits });
}

test('names are unique, and files, codes and names agree in form', () => {
  const names = checks.map((c) => c.name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z]+(-[a-z]+)+$/);
});

describe.each(checks.map((c) => [c.name, c] as const))('%s', (name, check) => {
  test('is silent on the right example', () => {
    expect(run(check, check.right).map((r) => r.message)).toEqual([]);
  });

  test('finds what is marked in the wrong example, and no more', () => {
    const marked = expected(check.wrong.record, 'data/example/episode.yaml').flatMap(({ at, codes }) => (codes.length ? codes.map((c) => `data/example/${c.split('@')[1]}`) : [at]));
    const reports = run(check, check.wrong);
    expect(marked.length).toBeGreaterThan(0);
    expect([...new Set(reports.map((r) => `${r.place.file}:${r.place.line}`))].sort(), reports.map((r) => r.message).join('\n')).toEqual([...new Set(marked)].sort());
  });

  test('says what it means in whole sentences, with a subject to accept it by', () => {
    expect(check.says).toMatch(/^[A-Z].*\.$/);
    expect(check.why).toMatch(/^[A-Z].*\.$/s);
    for (const r of run(check, check.wrong)) {
      expect(r.subject, r.message).toBeTruthy();
      expect(r.message).not.toMatch(/undefined|NaN|\[object|[^.]\.$/);
    }
    expect(describeCheck(name)).toContain(check.wrong.record.split('\n')[0]);
  });
});
