import { expect, test } from 'vitest';
import type { Built, Options } from '../../pipeline/build.js';
import type { Examined } from '../../pipeline/examine.js';
import { type Finding, width } from '../../pipeline/places/index.js';
import { asJson, summary } from '../../pipeline/summary.js';

const options: Options = { data: 'data', out: 'out', only: [], draft: false, failOn: 'error' };
const look = (columns: number) => ({ columns, ink: (_ink: unknown, text: string) => text });
const place = { file: 'data/a/episode.yaml', line: 3, column: 1, endLine: 3, endColumn: 4 };
const finding = (severity: Finding['severity'], code: string, accepted = false): Finding => ({ code, severity, place, message: `Message of ${code}.`, ...(accepted && { accepted: { reason: 'known', place } }) });

function examined(id: string, findings: Finding[]): Examined {
  return { id, key: 'k', ready: true, title: id, counts: { readings: 380, facts: 487, mentions: 44, agreed: 41, pictures: 18 }, claimed: [], said: [], findings, lines: { 'data/a/episode.yaml:3': 'abc def' } };
}

const mixed = [examined('one-card-two-boxes', [finding('error', 'first'), finding('note', 'second'), finding('warning', 'third', true)]), examined('温度', [finding('warning', 'fourth'), finding('error', 'fifth')])];

test('worst last, then the table, then what comes of it', () => {
  const lines = summary({ examined: mixed, fails: true }, options, look(100));
  expect(lines.filter((l) => /data\/a\/episode\.yaml:3:1$/.test(l)).map((l) => l.split(' data')[0])).toEqual(['accepted warning third', 'note second', 'warning fourth', 'error fifth', 'error first']);
  expect(lines.slice(-5)).toEqual([
    'episode             readings  facts  pictures      said  found',
    'one-card-two-boxes       380    487        18  41 of 44  1 error, 1 note, 1 accepted',
    '温度                     380    487        18  41 of 44  1 error, 1 warning',
    '',
    '2 findings count as errors.',
  ]);
});

test.each([60, 80, 120])('nothing is wider than %d columns', (columns) => {
  for (const l of summary({ examined: mixed, fails: true, draft: true, drawn: 3, reused: 1, moved: 0, published: { written: ['a'], unchanged: [], removed: [], left: ['b'] } } as Built, options, look(columns))) {
    expect(width(l), l).toBeLessThanOrEqual(columns);
  }
});

test('a build that was stopped says that nothing has changed, and how to go on', () => {
  const text = summary({ examined: mixed, fails: true, draft: false, drawn: 0, reused: 0 } as Built, options, look(200)).join('\n');
  expect(text).toMatch(/Nothing was built; what stands in out is as it was\. .*figureproof build --draft$/);
  const elsewhere = summary({ examined: mixed, fails: true, draft: false, drawn: 0, reused: 0 } as Built, { ...options, data: 'd', out: 'o', only: ['a'] }, look(200)).join('\n');
  expect(elsewhere).toMatch(/figureproof build a --draft --data d --out o$/);
});

test('an accepted finding never counts, and others from the severity on that is asked for', () => {
  const only = [examined('a', [finding('error', 'x', true), finding('warning', 'y')])];
  expect(summary({ examined: only, fails: false }, options, look(80)).at(-1)).toBe('Nothing found that counts as an error.');
  expect(summary({ examined: only, fails: true }, { ...options, failOn: 'warning' }, look(80)).at(-1)).toBe('1 finding counts as an error.');
  expect(summary({ examined: [examined('a', [])], fails: false }, options, look(80)).at(-1)).toBe('Nothing found.');
});

test('as JSON: the exit code, and each finding of each episode, worst first', () => {
  expect(asJson({ examined: mixed, fails: true }, options)).toMatchObject({ exit: 1, episodes: [{ id: 'one-card-two-boxes', readings: 380, findings: [{ code: 'first' }, { code: 'second' }, { code: 'third', accepted: { reason: 'known' } }] }, { id: '温度' }] });
});

test('warnings of a kind stand together, each kind where the first of it stands; errors stay in the order of their places', () => {
  const found = (severity: Finding['severity'], code: string, line: number): Finding => ({ ...finding(severity, code), place: { ...place, line } });
  const e = examined('a', [found('warning', 'x', 1), found('warning', 'y', 2), found('warning', 'x', 3), found('error', 'v', 4), found('error', 'w', 5), found('error', 'v', 6)]);
  const heads = summary({ examined: [e], fails: true }, options, look(80)).flatMap((l) => /^(?:warning|error) (\w) .*:(\d):1$/.exec(l)?.slice(1).join('') ?? []);
  expect(heads).toEqual(['x1', 'x3', 'y2', 'v4', 'w5', 'v6']);
});
