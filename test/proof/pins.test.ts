import { describe, expect, test } from 'vitest';
import { nearFacts, pinFor } from '../../pipeline/claims/index.js';
import { readPins } from '../../pipeline/script/index.js';
import { facts, read, verdicts } from './bench.js';

const load = 'mean:bench/stock/scene/temperature/core/load';
const idle = 'mean:bench/stock//temperature/core/idle';
const vague = 'Forty of those, and then the number is 67.';

describe('a pin ties a number to a fact, whose value is then checked', () => {
  test('the number that goes with it agrees and rests on it', () => {
    const { mentions, findings } = read(`<!-- pin: "67" = ${load} -->\n${vague}`);
    expect(mentions.filter((m) => m.text === '67').map((m) => [m.verdict, m.facts])).toEqual([['agrees', [load]]]);
    expect(findings.filter((f) => f.severity === 'error')).toEqual([]);
  });
  test('one that does not is an error as any other, with the right words', () => {
    const { findings } = read(`<!-- pin: "67" = ${idle} -->\n${vague}`);
    expect(findings.filter((f) => f.severity === 'error').map((f) => [f.code, f.place.line, f.said, f.suggest])).toEqual([['claim-disagrees', 2, '67', '38']]);
  });
  test('a rise is checked by its size', () => {
    expect(verdicts('<!-- pin: "29 degrees" = rise:bench/stock/scene/temperature/core/load~workload=,phase=idle -->\nIt is 29 degrees.')).toEqual(['29 degrees: agrees']);
  });
  test('the workload may stay where idle was read without one, and the id told is the whole one', () => {
    const { mentions, findings } = read('<!-- pin: "29 degrees" = rise:bench/stock/scene/temperature/core/load~phase=idle -->\nIt is 29 degrees.');
    expect(mentions.map((m) => [m.verdict, m.facts])).toEqual([['agrees', ['rise:bench/stock/scene/temperature/core/load~workload=,phase=idle']]]);
    expect(findings).toEqual([]);
  });
  test('it holds in a sentence that the next one takes back', () => {
    const { findings } = read(`<!-- pin: "38" = ${idle} -->\nWe said 38. That was wrong.`);
    expect(findings.filter((f) => f.severity === 'error')).toEqual([]);
    expect(verdicts(`<!-- pin: "38" = ${idle} -->\nWe said 38. That was wrong.`)).toEqual(['38: agrees']);
  });
  test('it overrides what the words say', () => {
    const words = 'On the bench at stock under load the core temperature is 38 degrees.';
    expect(verdicts(words)).toEqual(['38 degrees: disagrees']);
    expect(verdicts(`<!-- pin: "38 degrees" = ${idle} -->\n${words}`)).toEqual(['38 degrees: agrees']);
  });
});

describe('no claim', () => {
  const wrong = 'On the bench at stock under load the core temperature is 99 degrees.';
  test.each(['<!-- no claim: "99 degrees" -->', '<!-- pin: "99 degrees" no claim -->', '<!-- no-claim: “99 degrees” -->'])('%s', (pin) => {
    expect(verdicts(`${pin}\n${wrong}`)).toEqual(['99 degrees: not-a-claim']);
    expect(read(`${pin}\n${wrong}`).findings).toEqual([]);
  });
  test('part of the words will do, where they hold one number', () => {
    expect(verdicts(`<!-- no claim: "temperature is 99" -->\n${wrong}`)).toEqual(['99 degrees: not-a-claim']);
  });
});

describe('where a pin stands', () => {
  test('several in one comment, several comments one over the other', () => {
    const text = `<!-- pin: "67" = ${load}; "12" no claim -->\n<!-- no claim: "13" -->\nSo 67, 12, and 13.`;
    const { pins, faults } = readPins(text);
    expect(faults).toEqual([]);
    expect(pins.map((p) => [p.words, p.fact, text.slice(p.at.start, p.at.end)])).toEqual([['67', load, '67'], ['12', undefined, '12'], ['13', undefined, '13']]);
  });
  test('the second of two of the same', () => {
    const text = `<!-- no claim: "40" #2 -->\nThe 40 and the 40.`;
    expect(readPins(text).pins.map((p) => p.at.start)).toEqual([text.lastIndexOf('40')]);
  });
  test('in WebVTT a note before the cue speaks of all lines of the cue', () => {
    const text = `WEBVTT\n\nNOTE no claim: "99"; "K9"\n\n00:01.000 --> 00:04.000\nthe K9 on the bench\nsaid 99 then\n`;
    const { pins, faults } = readPins(text);
    expect(faults).toEqual([]);
    expect(pins.map((p) => text.slice(p.at.start - 4, p.at.end))).toEqual(['aid 99', 'the K9']);
  });
  test('inside a fence there are no pins', () => {
    expect(readPins('```\n<!-- pin: "1" = x -->\n```\nOne.')).toEqual({ pins: [], faults: [] });
  });
});

test.each([
  ['not on the next line', '<!-- no claim: "98 watts" -->\nIt draws 99 watts.', 'pin-words', 'The next line does not say "98 watts"; did you mean "99 watts"?'],
  ['nothing like it', '<!-- no claim: "98 watts" -->\nIt draws power.', 'pin-words', 'The next line does not say "98 watts", and no number at all'],
  ['only part of a number', '<!-- no claim: "9" -->\nIt draws 1,499.9 watts.', 'pin-words', 'The next line does not say "9"; its numbers are "1,499.9 watts"'],
  ['twice on the next line', '<!-- no claim: "40" -->\nThe 40 and the 40.', 'pin-ambiguous', '"40" stands twice on the next line; say which: "40" #1, or quote more of the words'],
  ['no such occurrence', '<!-- no claim: "40" #3 -->\nThe 40 and the 40.', 'pin-words', '"40" stands twice on the next line, so there is no #3'],
  ['at the end of the script', 'Hello.\n<!-- no claim: "40" -->', 'pin-words', 'No spoken line follows this pin'],
  ['neither fact nor no claim', '<!-- pin: "40" -->\nThe 40.', 'pin-form', 'The pin of "40" says neither a fact nor that it is no claim: "40" = FACT, or "40" no claim'],
  ['no quotes', '<!-- pin: 40 = mean:x -->\nThe 40.', 'pin-form', 'A pin quotes the words and names a fact or says that they state nothing: "29 degrees" = FACT; "K9" no claim'],
])('a pin that does not fit is a fault: %s', (_, text, code, message) => {
  const { pins, faults } = readPins(text);
  expect(pins).toEqual([]);
  expect(faults.map((f) => [f.code, f.message])).toEqual([[code, message]]);
});

test.each([
  ['an unknown fact', '<!-- pin: "67" = mean:bench/stock/scene/temperature/coer/load -->\nIt is 67.', 'pin-fact', load],
  ['no id at all', '<!-- pin: "67" = core -->\nIt is 67.', 'pin-fact', load],
  ['words without a number', '<!-- no claim: "a couple" -->\nA couple of runs: a couple is a couple here.', 'pin-ambiguous', '"a couple" #1'],
  ['words with no number in them', '<!-- no claim: "runs" -->\nA couple of runs.', 'pin-words', undefined],
  ['two numbers in one pin', `<!-- pin: "67 and 68" = ${load} -->\nIt is 67 and 68.`, 'pin-ambiguous', undefined],
])('and an error in the report: %s', (_, text, code, suggest) => {
  const found = read(text).findings.filter((f) => f.code.startsWith('pin-'));
  expect(found.map((f) => [f.code, f.severity, f.place.line, f.suggest])).toEqual([[code, 'error', 1, suggest]]);
});

test('pins offered for a number that cannot be tied are taken back as they are offered', () => {
  for (const text of ['The number is 67.', 'Something is 248 and something is 248.']) {
    for (const m of read(text).mentions.filter((x) => x.verdict === 'untied')) {
      const near = nearFacts(m, facts);
      expect(near.length).toBeGreaterThan(0);
      const nth = text.split(m.text).length > 2 ? 1 : undefined;
      for (const pin of [...near.map((n) => pinFor(m.text, { fact: n.fact, nth })), pinFor(m.text, { nth })]) {
        expect(read(`${pin}\n${text}`).findings.filter((f) => f.code.startsWith('pin-')), pin).toEqual([]);
      }
    }
  }
  expect(pinFor('67', { cues: true, nth: 2 })).toBe('NOTE no claim: "67" #2');
});
