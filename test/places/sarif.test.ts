// SARIF 2.1.0 against the published schema (OASIS; sarif-2.1.0-rtm.5 as bundled in the npm package @microsoft/jest-sarif
// 1.0.0-beta.0, MIT) and the cases of sarif_cases.csv, which that schema and errata 01 judge alike.
import Ajv from 'ajv-draft-04';
import type { Log } from 'sarif';
import { expect, test } from 'vitest';
import { type Finding, Source, sarif } from '../../pipeline/places/index.js';
import { oracle, oracleJson } from '../oracles/table.js';

// The schema's pattern for languages is no regular expression under the u flag; formats are annotations.
const ajv = new Ajv.default({ strict: false, unicodeRegExp: false, validateFormats: false });
const valid = ajv.compile<Log>(oracleJson<object>('sarif-2.1.0-rtm.5.schema.json'));

const script = new Source('data/a b/script.md', 'One.\nIt 🙂 rose 31 degrees — from 38 to 67.\n');
const start = script.text.indexOf('31 degrees');
const finding: Finding = {
  code: 'claim-disagrees', severity: 'error', place: script.place(start, start + 10), said: '31 degrees', message: 'Says 31 degrees; the record gives 29 K.', suggest: '29 degrees', slip: 'rounded early', subject: 'rise:x',
  related: [{ place: { file: 'data/a b/readings.csv', line: 4, column: 1, endLine: 4, endColumn: 20 }, label: 'run 1' }],
};
const accepted: Finding = { ...finding, code: 'a-note', severity: 'note', accepted: { reason: 'known', place: { ...finding.place, file: 'data/a b/episode.yaml' } } };
const options = { version: '0.1.0', rule: (code: string) => (code === 'claim-disagrees' ? { says: 'Says', help: 'Help' } : undefined), uri: (f: string) => f, line: (file: string, n: number) => (file === script.file ? script.line(n) : undefined) };
const log = sarif([finding, accepted], options);

test('the log is valid, and says that columns are UTF-16 units', () => {
  expect(valid(log), JSON.stringify(valid.errors)).toBe(true);
  expect(valid(sarif([], options))).toBe(true);
  expect(log.runs[0]!.columnKind).toBe('utf16CodeUnits');
});

test('each result has its rule, level and region; URIs are relative and encoded', () => {
  const [first, second] = log.runs[0]!.results!;
  const { rules } = log.runs[0]!.tool.driver;
  expect(rules!.map((r) => r.id)).toEqual(['a-note', 'claim-disagrees']);
  expect([first!.ruleId, rules![first!.ruleIndex!]!.id, first!.level]).toEqual(['claim-disagrees', 'claim-disagrees', 'error']);
  expect(rules![1]!.help).toEqual({ text: 'Help' });
  // "It 🙂 rose " is eleven UTF-16 units: the face counts two.
  expect(first!.locations![0]!.physicalLocation).toEqual({ artifactLocation: { uri: 'data/a%20b/script.md' }, region: { startLine: 2, startColumn: 12, endLine: 2, endColumn: 22 } });
  expect(first!.relatedLocations![0]!.message).toEqual({ text: 'run 1' });
  expect(second!.suppressions).toMatchObject([{ kind: 'external', status: 'accepted', justification: 'known' }]);
});

test('a fix replaces just what was said, and is there only where that stands at the place', () => {
  const [change] = log.runs[0]!.results![0]!.fixes![0]!.artifactChanges;
  expect(change!.replacements).toEqual([{ deletedRegion: { startLine: 2, startColumn: 12, endLine: 2, endColumn: 22 }, insertedContent: { text: '29 degrees' } }]);
  const moved = sarif([{ ...finding, said: 'thirty-one degrees' }], options);
  expect(moved.runs[0]!.results![0]!.fixes).toBeUndefined();
});

test('the same findings give the same bytes', () => {
  expect(JSON.stringify(sarif([finding, accepted], options))).toBe(JSON.stringify(log));
});

const minimal = (): any => ({ version: '2.1.0', runs: [{ tool: { driver: { name: 'x' } }, results: [{ message: { text: 'x' }, locations: [{ physicalLocation: { artifactLocation: { uri: 'x' }, region: { startLine: 1, startColumn: 1 } } }] }] }] });
const edits: Record<string, (log: any) => void> = {
  'none (version 2.1.0, one run, driver name, one result with message.text, region 1:1)': () => {},
  'result.message removed': (l) => delete l.runs[0].results[0].message,
  'region.startLine = 0': (l) => (l.runs[0].results[0].locations[0].physicalLocation.region.startLine = 0),
  'result.level = info': (l) => (l.runs[0].results[0].level = 'info'),
  'version = 2.1': (l) => (l.version = '2.1'),
  'tool.driver.name removed': (l) => delete l.runs[0].tool.driver.name,
  'unknown top-level property': (l) => (l.extra = 1),
  'result.ruleIndex = -1': (l) => (l.runs[0].results[0].ruleIndex = -1),
  'result.rank = 101': (l) => (l.runs[0].results[0].rank = 101),
  'runs = []': (l) => (l.runs = []),
};
test.each(oracle('sarif_cases.csv'))('the schema judges as the table: $change_to_minimal_log', ({ change_to_minimal_log, valid: expected }) => {
  const changed = minimal();
  edits[change_to_minimal_log!]!(changed);
  expect(valid(changed)).toBe(expected === '1');
});
