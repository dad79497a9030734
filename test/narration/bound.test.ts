// Scripts whose numbers come from facts.
import { expect, test } from 'vitest';
import { renderBound } from '../../pipeline/narration/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf } from '../facts/episode.js';
import { arrangement, mapOf, parts } from './episodes.js';

const facts = factsOf('bench/stock//temperature/core/idle: 38 38 39 °C\nbench/stock/scene/temperature/core/load: 67 67 68 °C\nbox/stock/scene/temperature/core/load: 78 78 78 °C\nbench/stock/scene/power/board/load: 247.6 248.3 248.1 W\n/stock//power/board/limit: = 250 W', {
  parts, setups: mapOf(arrangement('bench', 'on the bench', 'the bench'), arrangement('box', 'the box & lid')),
});
const load = 'bench/stock/scene/temperature/core/load';
const rise = `rise:${load}~workload=,phase=idle`;
const filled = (text: string) => renderBound(text, facts).value;
const found = (text: string) => renderBound(new Source('data/example/script.md', text), facts).findings;

test.each([
  [`It rose {{say "${rise}"}}.`, 'It rose twenty-nine degrees.'],
  [`It rose {{say "rise:${load}~phase=idle"}}.`, 'It rose twenty-nine degrees.'],
  [`It rose {{say "rise" "${load}" "bench/stock/scene/temperature/core/idle"}}.`, 'It rose twenty-nine degrees.'],
  ['{{say "bench/stock/scene/temperature/core/idle"}}', 'thirty-eight degrees'],
  [`Rise: {{fact "${rise}"}}`, 'Rise: 29 K'],
  [`{{say "${load}"}}`, 'sixty-seven degrees'],
  [`{{say "${load}" digits=true}}`, '67 degrees'],
  [`{{say "${load}" number=true}}`, 'sixty-seven'],
  [`{{fact "${load}" number=true}}`, '67'],
  [`{{say "difference" "${load}" "box/stock/scene/temperature/core/load" size=true}} cooler`, 'eleven degrees cooler'],
  [`{{say "difference" "${load}" "box/stock/scene/temperature/core/load"}}`, 'minus eleven degrees'],
  ['{{fact "percent_of" "bench/stock/scene/power/board/load" "/stock//power/board/limit"}}', '99 %'],
  ['{{name "setup" "bench"}}', 'the bench'],
  ['{{name "setup" "bench" shown=true}}', 'bench'],
  ['{{name "setup" "box"}} {{!-- a comment --}}*as it is*', 'the box & lid *as it is*'],
  ['no numbers at all', 'no numbers at all'],
])('%s', (template, text) => expect(filled(template)).toBe(text));

test('one unknown fact stops it, and every unknown one is told with line, column and the nearest ids', () => {
  const text = `First line.\nThen {{say "bench/stock/scene/temperature/cor/load"}} and {{fact "rise:nothing"}}.\n`;
  const { value, findings } = renderBound(new Source('data/example/script.md', text), facts);
  expect(value).toBeUndefined();
  expect(findings.map((f) => [f.code, f.severity, f.place.file, f.place.line, f.place.column])).toEqual([['bound-fact', 'error', 'data/example/script.md', 2, 6], ['bound-fact', 'error', 'data/example/script.md', 2, 59]]);
  expect(findings[0]!.message).toContain(`mean:${load}`);
  expect(findings[0]!.suggest).toBe(`mean:${load}`);
  expect(findings[0]!.said).toBe('{{say "bench/stock/scene/temperature/cor/load"}}');
  expect(findings[0]!.place.endColumn).toBe(54);
});

test.each([
  ['{{say "percent_of" "bench/stock/scene/temperature/core/load" "box/stock/scene/temperature/core/load"}}', 'bound-fact', 'their zero is arbitrary'],
  ['{{say "rize" "a" "b"}}', 'bound-fact', 'did you mean "rise"?'],
  ['{{name "setup" "bnech"}}', 'bound-name', 'did you mean "bench"?'],
  ['{{name "box" "bench"}}', 'bound-name', 'setup, setting, workload'],
  ['{{sya "x"}}', 'bound-syntax', 'did you mean {{say …}}?'],
  ['{{say}}', 'bound-syntax', 'in quotes'],
  ['{{say bench}}', 'bound-syntax', 'in quotes'],
  ['{{say "x" loud=true}}', 'bound-syntax', 'no option loud'],
  ['{{say "x" digits="yes"}}', 'bound-syntax', 'digits=true'],
  ['{{#if true}}x{{/if}}', 'bound-syntax', 'blocks and partials'],
  ['{{> other}}', 'bound-syntax', 'blocks and partials'],
  ['{{constructor}}', 'bound-syntax', 'nothing that can be filled in'],
  ['{{__proto__}}', 'bound-syntax', 'nothing that can be filled in'],
  ['{{toString "x"}}', 'bound-syntax', 'nothing that can be filled in'],
  ['{{lookup "a" "constructor"}}', 'bound-syntax', 'nothing that can be filled in'],
  ['{{{say "x" "constructor" "y"}}}', 'bound-fact', '"x" is no kind of fact'],
  ['{{say (lookup this "constructor")}}', 'bound-syntax', 'in quotes'],
])('%s is told', (template, code, words) => {
  const all = found(template);
  expect(all.map((f) => f.code)).toEqual([code]);
  expect(all[0]!.message).toContain(words);
  expect(all[0]!.place).toMatchObject({ line: 1, column: 1 });
});

test.each(['a\n{{say "x"\n', 'a\nb {{/if}}', '{{', '{{say "}}', 'x\n{{#say "y"}}\n'])('broken braces (%j) are an error with a line', (template) => {
  const all = found(template);
  expect(all).toHaveLength(1);
  expect(all[0]).toMatchObject({ code: 'bound-syntax', severity: 'error' });
  expect(all[0]!.place.line).toBeGreaterThan(0);
  expect(all[0]!.place.line).toBeLessThanOrEqual(template.split('\n').length);
});

test('columns count UTF-16 units, as everywhere', () => {
  expect(found('😀 {{sya "x"}}')[0]!.place).toMatchObject({ line: 1, column: 4 });
});
