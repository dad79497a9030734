// Bad records: each with the place that is to be underlined between ‹ and ›, the code, and words that the message must have.
import { describe, expect, test } from 'vitest';
import { marked, readEpisode, spanOf } from './reading.js';

const readings = 'readings: [{for: {}, power: 1 W}]\n';
/** A record that is right but for what is put into it. */
const around = (more: string) => `title: T\n${readings}${more}\n`;
const run = (value: string) => `title: T\nreadings:\n  - for: {}\n    power/board: ${value}\n`;

type Case = [what: string, text: string, ...expected: [code: string, ...words: string[]][]];

const cases: Case[] = [
  // The form of the YAML
  ['an empty file', '‹›', ['record-empty', 'title']],
  ['nothing but a comment', '‹›# soon\n', ['record-empty']],
  ['a list', '‹- a›\n- b\n', ['record-form', 'a list']],
  ['a single value', '‹hello›\n', ['record-form', 'a single value']],
  ['a second document', `title: T\n${readings}‹---›\ntitle: U\n`, ['yaml-form', 'one document']],
  ['a tab as indentation', `title: T\nsetups:\n‹\t›a: A\n`, ['yaml-tab', 'spaces']],
  ['a field twice', `title: T\n‹title›: U\n${readings}`, ['yaml-duplicate', '"title"']],
  ['a reading twice in one block', `title: T\nreadings:\n  - power/board: 1 W\n    ‹power/board›: 2 W\n`, ['yaml-duplicate', 'power/board']],
  ['a colon in a plain text', `title: ‹O›ne: two\n`, ['yaml-form', 'quotes']],
  ['an open bracket', `title: T\nmethod: [a, b\n‹r›eadings: 1\n`, ['yaml-form', 'not closed']],
  ['a reserved character', `title: ‹@›home\n`, ['yaml-form', 'quotes']],
  ['a percent sign at the start', `title: ‹%›\n`, ['yaml-form', 'quotes']],
  ['an unknown tag', `title: ‹!thing› T\n${readings}`, ['yaml-form', 'Tags']],
  ['a number tag', `title: T\n${readings}summary: ‹!!float› 3\n`, ['yaml-form', 'Tags']],
  ['a control character', `title: a‹\u0007›b\n`, ['yaml-form', 'U+0007']],
  ['an alias of nothing', around('summary: ‹*gone›'), ['yaml-alias', '&gone']],
  ['an alias within itself', around('method: &m [a, ‹*m›]'), ['yaml-alias', 'inside itself']],
  ['a merge key', around('parts:\n  core: {‹<<›: {name: Core}}'), ['record-field', 'merge']],
  ['a comment swallowed by accident', around('summary: Card ‹#2›'), ['yaml-comment', 'quotes']],
  ['a comment that swallows a bracket', 'title: T\nsetups:\n  case: {name: Case ‹#4, price: $90}›\nsettings: [a]\n', ['yaml-comment', 'closing bracket']],
  ['a line without a colon', `title: T\n‹summary›\nreadings: []\n`, ['yaml-form', 'name: value']],

  // Fields
  ['no title', `‹readings: [{for: {}, power: 1 W}]›\n`, ['record-missing', 'title']],
  ['an empty title', `‹title›:\n${readings}`, ['record-form', 'found nothing']],
  ['a mistyped field', `title: T\n‹setings›: [a]\n${readings}`, ['record-field', 'did you mean settings?']],
  ['an unknown field', around('‹colour›: red'), ['record-field', 'unknown field "colour"']],
  ['a mistyped field within', around('setups:\n  a: {‹nam›: A}'), ['record-field', 'did you mean name?']],
  ['a map where a text is expected', around('summary: ‹{a: b}›'), ['record-form', 'found a map']],
  ['a day that is none', around('date: ‹2026-02-30›'), ['record-form', 'not a day']],
  ['a day the other way round', around('date: ‹14.3.2026›'), ['record-form', '2026-03-14']],
  ['a choice mistyped', around('settings:\n  a: {kind: ‹undervolted›}'), ['record-form', 'did you mean undervolt?']],
  ['an id with a space', around('setups:\n  ‹open bench›: {}'), ['record-field', 'cannot be an id']],
  ['an id with a slash', around('parts: [‹a/b›]'), ['record-form', 'cannot be an id']],
  ['a price without a currency', around('setups:\n  a: {price: ‹499›}'), ['unit-missing', 'no unit']],
  ['a price in watts', around('setups:\n  a: {price: ‹499 W›}'), ['value-form', 'currency']],

  // Values
  ['a decimal comma', run('‹71,5 W›'), ['value-form', 'decimal comma']],
  ['a decimal comma before three digits', run('‹0,985 V›'), ['value-form', 'decimal comma']],
  ['one decimal comma of three', run('0.985 ‹0,985› 0.990 V'), ['value-form', 'decimal comma']],
  ['decimal commas in a map in braces', run('{load: ‹60,5 61,5 °C›}').replace('power/board', 'temperature/core'), ['value-form', 'write 60.5 61.5 °C']],
  ['a decimal comma in a map in braces, before another phase', run('{load: ‹60,5 W›, idle: 20 W}'), ['value-form', 'decimal comma']],
  ['a decimal comma alone in a map in braces', run('{idle: 20 W, load: ‹60,5›}'), ['value-form', 'write 60.5']],
  ['a comma that may be either sign', run('‹1,234› 1,250 1,240 W'), ['value-ambiguous', 'read as 1234; write it without the comma, or as 1.234 if the comma is a decimal sign (and so with 2 more numbers)']],
  ['a decimal comma in a list', run('[‹71,5 W›]'), ['value-form', '71.5']],
  ['a hexadecimal number', run('‹0x1F›'), ['value-form', 'hexadecimal']],
  ['an octal number', run('‹0o17 W›'), ['value-form', 'octal']],
  ['a leading zero', run('‹012 W›'), ['value-form', 'write 12 W']],
  ['underscores', run('‹1_000 W›'), ['value-form', 'write 1000 W']],
  ['a word', run('‹yes›'), ['value-form', 'not a number']],
  ['no value', run('').replace('power/board:', '‹power/board›:'), ['record-form', 'found nothing']],
  ['not a number', run('‹.nan›'), ['value-form', 'finite']],
  ['infinity', run('‹-.inf›'), ['value-form', 'finite']],
  ['an unknown unit', run('‹61 Wats›'), ['unit-unknown', 'did you mean']],
  ['an unknown unit that is nearest to how one is said', run('‹61 Volz›'), ['unit-unknown', 'did you mean volt?']],
  ['an unknown unit behind runs', run('61 62 63 ‹Wats›'), ['unit-unknown', 'did you mean']],
  ['one bad run of three', run('61 ‹6_2› 63 W'), ['value-form', '62']],
  ['a spread', run('‹61 ± 1 W›'), ['value-form', 'spread']],
  ['a range', run('‹61–64 W›'), ['value-form', 'range']],
  ['an estimate', run('‹~61 W›'), ['value-form', 'not exact']],
  ['thousands with a space', run('‹2 400 2 410 W›'), ['value-form', '2400']],
  ['a value beyond all measure', run('‹1e999 W›'), ['value-form', 'too large']],
  ['a value below all measure', run('‹1e-99 W›'), ['value-form', 'too small']],
  ['a time in two units', `title: T\nreadings:\n  - duration/render: ‹1 min 30 s›\n`, ['value-form', 'several units']],
  ['a measure with no usual unit', `title: T\nmeasures: [stiffness]\nreadings:\n  - stiffness/spring: ‹61›\n`, ['unit-missing', 'no unit']],
  ['a constant with two values', around('constants:\n  power/board/limit: 250 ‹251 W›'), ['record-form', 'one value']],
  ['a limit with two values among readings', `title: T\nreadings:\n  - power/board: {limit: 250 ‹251 W›}\n`, ['record-form', 'one value']],

  // Names
  ['an unknown setup', `title: T\nsetups: [open-bench, small-case]\nreadings:\n  - for: {setup: ‹open-bnech›}\n    power: 1 W\n`, ['unknown-name', 'did you mean open-bench?']],
  ['an unknown workload', `title: T\nworkloads: [scene]\nreadings:\n  - for: {workload: ‹film›}\n    power: 1 W\n`, ['unknown-name', 'known are scene']],
  ['an unknown part', `title: T\nparts: [core, hotspot]\nreadings:\n  - ‹temperature/hotpsot›: 1 °C\n`, ['unknown-name', 'did you mean hotspot?']],
  ['a mistyped measure with no section', `title: T\nreadings:\n  - ‹temprature/core›: 1 °C\n`, ['unknown-name', 'did you mean temperature?']],
  ['an unknown phase', `title: T\nphases: [idle, load]\nreadings:\n  - temperature/core: {‹idel›: 1 °C}\n`, ['unknown-name', 'did you mean idle?']],
  ['too many steps in a key', `title: T\nreadings:\n  - ‹a/b/c/d›: 1 W\n`, ['record-field', 'measure/part/phase']],
  ['a phase within a phase', `title: T\nreadings:\n  - power/board/load: {‹idle›: 1 W}\n`, ['record-form', 'the phase is load already']],
  ['a reading twice', `title: T\nreadings:\n  - power/board/load: 1 W\n  - power/board: {load: ‹2 W›}\n`, ['reading-twice', '///power/board/load']],
  ['a reference with a space', `title: T\nsetups: [open-bench]\nreadings:\n  - for: {setup: ‹open bench›}\n    power: 1 W\n`, ['unknown-name', 'did you mean open-bench?']],
  ['a measure by another word', `title: T\nreadings:\n  - ‹clock/core›: 1 GHz\n`, ['unknown-name', 'did you mean frequency?']],
  ['a measure by its unit', `title: T\nreadings:\n  - ‹fps›: 60\n`, ['unknown-name', 'did you mean frame_rate?']],
  ['an id of odd characters', `title: T\nreadings:\n  - for: {setup: ‹a&b›}\n    power: 1 W\n`, ['unknown-name', 'an id has letters']],
  ['a setting in a setup section name', `title: T\nreadings:\n  ‹a/b/c/d›:\n    power: 1 W\n`, ['record-field', 'setup/setting/workload']],

  // What refers to readings
  ['a stated value of no kind', around('stated:\n  - {‹rised›: [a, b], is: 2 W}'), ['record-field', 'did you mean rise?']],
  ['a stated value without its value', around('stated:\n  - ‹{mean: power}›'), ['record-missing', '"is"']],
  ['a stated value of two kinds', around('stated:\n  - {mean: power, ‹raw›: power, is: 2 W}'), ['record-form', 'one kind']],
  ['a difference of one', around('stated:\n  - {‹difference›: power, is: 2 W}'), ['record-form', 'takes 2 keys']],
  ['a rise of something never read at idle', around('stated:\n  - {rise: ‹power›, is: 2 W}'), ['reading-unknown', 'no idle reading']],
  ['a key that nothing fits', around('stated:\n  - {mean: ‹powr›, is: 2 W}'), ['reading-unknown', 'no reading of powr']],
  ['a key that more than one fits', `title: T\nreadings:\n  - {power/a: 1 W, power/b: 2 W}\nstated:\n  - {mean: ‹power›, is: 2 W}\n`, ['reading-ambiguous', 'fits 2 readings']],
  ['a run set aside that is not there', around('aside:\n  - {reading: power, run: ‹7›, reason: r}'), ['reading-unknown', 'runs are 1']],
  ['a run set aside without its reason', around('aside:\n  - ‹{reading: power, run: 1}›'), ['record-missing', 'reason']],
  ['an acceptance without its reason', around('accept:\n  - ‹{finding: a, subject: b}›'), ['record-missing', 'reason']],
  ['a quote under no key', around('quotes:\n  - {from: other, fact: "mean:////a//", as: ‹core›}'), ['record-form', 'no key']],
  ['a picture that is chart and graphic', around('pictures:\n  - {chart: bars, ‹graphic›: figure}'), ['record-form', 'not both']],
  ['a second unit that is none', around('also: [°F, ‹gallons per fortnight›]'), ['unit-unknown']],
  ['a curve that turns back', around('curves:\n  c: {of: Duty in %, against: Core in °C, points: {40: 30, 60: 50, ‹50›: 60}}'), ['record-form', 'upward']],
  ['a curve without a unit', around('curves:\n  c: {of: ‹Duty›, against: Core in °C, points: {40: 30}}'), ['record-form', 'has no unit']],
  ['a severity that is none', around('severities: {runs-disagree: ‹warn›}'), ['record-form', 'did you mean warning?']],

  // Files
  ['a path that leaves the folder', around('tables: ‹../other/readings.csv›'), ['record-form', 'leaves']],
  ['a path that leaves it in the middle', around('script: ‹a/../../b.md›'), ['record-form', 'leaves']],
  ['an absolute path', around('script: ‹/etc/passwd›'), ['record-form', 'relative']],
  ['a drive', around('script: ‹C:/a.md›'), ['record-form', 'no path']],
  ['an address', around('script: ‹https://example.org/a.md›'), ['record-form', 'no path']],
  ['backslashes', around('script: ‹texts\\script.md›'), ['record-form', 'texts/script.md']],
  ['a table that is not there', around('tables: ‹readings.csv›'), ['file-missing', 'no such file']],
  ['an unknown placeholder', around('layouts: {a: {frames: {column: 1, average: frame_rate}}}\nlogs:\n  - {files: ‹"logs/{seting}.csv"›, layout: a}'), ['record-form', 'did you mean {setting}?']],
  ['a wildcard', around('layouts: {a: {frames: {column: 1, average: frame_rate}}}\nlogs:\n  - {files: ‹logs/*.csv›, layout: a}'), ['record-form', 'wildcard']],
  ['a pattern that no file fits', around('layouts: {a: {frames: {column: 1, average: frame_rate}}}\nlogs:\n  - {files: ‹"logs/{run}.csv"›, layout: a}'), ['file-missing', 'no file fits']],
  ['an unknown layout', around('layouts: {sensors: {frames: {column: 1, average: frame_rate}}}\nlogs:\n  - {files: a.csv, layout: ‹sensor›}'), ['unknown-name', 'did you mean sensors?']],
  ['a setting said twice', around('layouts: {a: {frames: {column: 1, average: frame_rate}}}\nlogs:\n  - {files: "{setting}.csv", layout: a, for: {setting: ‹stock›}}'), ['record-form', 'already'], ['file-missing']],
  ['a layout without columns', around('layouts:\n  ‹a›: {time: {column: t}}'), ['record-missing', 'columns']],
  ['a layout without time', around('layouts:\n  ‹a›: {columns: {p: power W}, phase: load}'), ['record-missing', 'time']],
  ['a layout without phases', around('layouts:\n  ‹a›: {columns: {p: power W}, time: {column: t}}'), ['record-missing', 'phases']],
  ['a column without a unit', around('layouts:\n  a: {columns: {p: ‹stiffness/core›}, time: {column: t}, phase: load}'), ['unit-missing', 'unit']],
  ['a window that is none', around('layouts:\n  a: {columns: {p: power W}, time: {column: t}, windows: {load: ‹the end›}}'), ['record-form', 'no window']],
  ['a window that is empty', around('layouts:\n  a: {columns: {p: power W}, time: {column: t}, windows: {load: ‹60 s to 30 s›}}'), ['record-form', 'empty']],
  ['a low figure of no definition', around('layouts:\n  a: {frames: {column: 1, low: {frame_rate/low: ‹the bad ones›}}}'), ['record-form', 'slowest 1 %']],
  ['a rate in watts', around('layouts:\n  a: {columns: {p: power W}, time: {rate: ‹4 W›}, phase: load}'), ['value-form', 'lines per second']],
];

describe('a bad record', () => {
  test.each(cases)('%s', (_, text, ...expected) => {
    const { text: plain, spans } = marked(text);
    const { findings } = readEpisode(plain);
    const told = findings.map((f) => `${spanOf(f)} ${f.code} ${f.message}`).join('\n');
    const hit = expected.map(([code, ...words]) => findings.find((f) => f.code === code && words.every((w) => f.message.toLowerCase().includes(w.toLowerCase()))));
    expect(hit.every(Boolean), `expected ${JSON.stringify(expected)} among\n${told}`).toBe(true);
    expect(spans.length, 'each case marks its place').toBeGreaterThan(0);
    for (const span of spans) expect(findings.map(spanOf), told).toContain(span);
    expect(spanOf(hit[0]!), told).toBe(spans[0]);
  });

  test('the same is told, at the same places, where lines end as on other systems', () => {
    for (const [what, text] of cases) {
      const { text: plain } = marked(text);
      const told = (t: string) => readEpisode(t).findings.map((f) => `${spanOf(f)} ${f.code}`);
      expect(told(plain.replaceAll('\n', '\r\n')), what).toEqual(told(plain));
    }
  });

  test('every message is a whole sentence that begins with a capital or with what was written', () => {
    for (const [, text] of cases) {
      for (const f of readEpisode(marked(text).text).findings) {
        expect(f.message, f.code).toMatch(/^[\p{Lu}"$*.'%A-Z]|^\S+\/|^\S+\.\w+/u);
        expect(f.message).not.toMatch(/undefined|NaN|\[object/);
      }
    }
  });

  test('what is wrong in a block is told even where its scope is wrong, and once for several scopes', () => {
    const { findings } = readEpisode('title: T\nsetups: [a, b]\nreadings:\n  - for: {setup: c}\n    temprature: 1 Wat\n  - for: {setup: [a, b]}\n    power: 1,5 W\n');
    expect(findings.map((f) => [f.code, f.place.line])).toEqual([['unknown-name', 4], ['unknown-name', 5], ['unit-unknown', 5], ['value-form', 7]]);
  });

  test('all errors are told at once, in all parts of the record', () => {
    const { findings } = readEpisode('titel: T\ndate: yesterday\nsetups: [a, b c]\nreadings:\n  - for: {setup: c}\n    power: 1,5 W\n  - for: {setup: a}\n    power: 1 Wat\nstated:\n  - {mean: x, is: 1}\n');
    expect([...new Set(findings.map((f) => f.place.line))].sort()).toEqual([1, 2, 3, 5, 6, 8, 10].sort());
  });
});
