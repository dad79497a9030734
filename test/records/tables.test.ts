// The two tables: every bad cell at its line and column, and every good row still read.
import { Buffer } from 'node:buffer';
import { describe, expect, test } from 'vitest';
import { Source } from '../../pipeline/places/index.js';
import { readNames, readReadings } from '../../pipeline/records/index.js';
import { marked, readEpisode, spanOf } from './reading.js';

const header = 'setup,setting,workload,measure,part,phase,run,value,unit\n';
const good = 'bench,stock,scene,power,board,load,1,247.5,W\n';

describe('readings.csv', () => {
  test('one row a reading; an empty run is a constant; columns in any order', () => {
    const { value, findings } = readReadings(new Source('r.csv', 'value,unit,run,setup,setting,workload,measure,part,phase,note\n247.50,W,1,bench,stock,scene,power,board,load,"a, b"\n250,W,,bench,stock,,power,board,limit,\n'));
    expect(findings).toEqual([]);
    expect(value!.map((r) => [r.key, r.run, r.quantity.value.toString(), r.quantity.decimals, r.constant, r.place.line])).toEqual([
      ['bench/stock/scene/power/board/load', '1', '247.5', 2, false, 2],
      ['bench/stock//power/board/limit', '', '250', 0, true, 3],
    ]);
  });

  test.each<[string, string, string, string]>([
    ['empty', '‹›', 'table-empty', 'header'],
    ['only a header', `‹›${header}`, 'table-empty', 'no rows'],
    ['a heading mistyped', `setup,setting,workload,measure,part,phase,run,‹valeu›,unit\n${good}`, 'table-header', 'did you mean value?'],
    ['a heading too many', `setup,setting,workload,measure,part,phase,run,value,unit,‹colour›\n`, 'table-header', 'unknown column'],
    ['a heading twice', `setup,setting,workload,measure,part,phase,run,value,unit,‹unit›\n`, 'table-header', 'twice'],
    ['a heading missing', `‹setup,setting,workload,measure,part,phase,value,unit›\n`, 'table-header', 'lacks "run"'],
    ['no header at all', `‹bench›,stock,scene,power,board,load,1,247.5,W\n`, 'table-header', 'unknown column "bench"'],
    ['semicolons', `‹setup;setting;workload;measure;part;phase;run;value;unit›\n`, 'table-header', 'separated by ";"'],
    ['a row too short', `${header}‹bench,stock,scene,power,board,load,1,247.5›\n`, 'table-ragged', '8 cells'],
    ['a row too long', `${header}bench,stock,scene,power,board,load,1,247.5,W,‹x›\n`, 'table-ragged', '10 cells'],
    ['a decimal comma that widens its row', `${header}bench,stock,scene,power,board,load,1,247,5,‹W›\n`, 'table-ragged', '10 cells, the header has 9; if 247,5 is one value, write 247.5'],
    ['a decimal comma', `${header}bench,stock,scene,power,board,load,1,‹"247,5"›,W\n`, 'table-value', 'decimal comma'],
    ['a decimal comma before three digits', `${header}bench,stock,scene,voltage,core,load,1,‹"0,985"›,V\n`, 'table-value', 'decimal comma'],
    ['a comma that may be either sign', `${header}bench,stock,scene,power,board,load,1,‹"1,234"›,W\n`, 'value-ambiguous', 'as 1.234'],
    ['no value', `${header}bench,stock,scene,power,board,load,1,‹›,W\n`, 'table-value', 'missing'],
    ['a value that is no number', `${header}bench,stock,scene,power,board,load,1,‹warm›,W\n`, 'table-value', 'not a number'],
    ['not a number', `${header}bench,stock,scene,power,board,load,1,‹NaN›,W\n`, 'table-value', 'finite'],
    ['infinity', `${header}bench,stock,scene,power,board,load,1,‹-Infinity›,W\n`, 'table-value', 'finite'],
    ['a hexadecimal value', `${header}bench,stock,scene,power,board,load,1,‹0x1F›,W\n`, 'table-value', 'hexadecimal'],
    ['underscores', `${header}bench,stock,scene,power,board,load,1,‹1_000›,W\n`, 'table-value', 'write 1000'],
    ['beyond all measure', `${header}bench,stock,scene,power,board,load,1,‹1e400›,W\n`, 'table-value', 'too large'],
    ['no unit', `${header}bench,stock,scene,power,board,load,1,247.5,‹›\n`, 'table-unit', 'missing'],
    ['an unknown unit', `${header}bench,stock,scene,power,board,load,1,247.5,‹Wats›\n`, 'table-unit', 'unknown unit'],
    ['an id with a space', `${header}‹open bench›,stock,scene,power,board,load,1,247.5,W\n`, 'table-id', 'cannot be a setup'],
    ['an id with a slash', `${header}bench,stock,scene,power,‹a/b›,load,1,247.5,W\n`, 'table-id', 'cannot be a part'],
    ['a run with a space', `${header}bench,stock,scene,power,board,load,‹run 1›,247.5,W\n`, 'table-id', 'run'],
    ['no measure', `${header}bench,stock,scene,‹›,board,load,1,247.5,W\n`, 'table-value', 'measure'],
    ['a quote never closed', `${header}bench,stock,scene,power,board,load,1,247.5,‹"›W\n`, 'table-form', 'never closed'],
    ['a quote in a cell', `${header}bench,stock,scene,power,bo‹"›ard,load,1,247.5,W\n`, 'table-form', 'quote'],
    ['a row after a quoted line end', `setup,setting,workload,measure,part,phase,run,value,unit,note\nbench,stock,scene,power,board,load,1,1,W,"a\nb"\nbench,stock,scene,power,board,load,2,‹x›,W,\n`, 'table-value', 'not a number'],
  ])('%s', (_, text, code, words) => {
    const { text: plain, spans } = marked(text, 'r.csv');
    const { findings } = readReadings(new Source('r.csv', plain));
    const told = findings.map((f) => `${spanOf(f)} ${f.code} ${f.message}`).join('\n');
    const hit = findings.find((f) => f.code === code && f.message.toLowerCase().includes(words.toLowerCase()));
    expect(hit && spanOf(hit), told).toBe(spans[0]);
  });

  test('all bad cells at once, the good rows kept', () => {
    const { value, findings } = readReadings(new Source('r.csv', `${header}${good}bench,stock,scene,power,board,load,2,x,Wats\nbench,stock\n${good.replace(',1,', ',3,')}`));
    expect(findings.map((f) => [f.code, f.place.line, f.place.column])).toEqual([['table-value', 3, 38], ['table-unit', 3, 40], ['table-ragged', 4, 1]]);
    expect(value!.map((r) => r.run)).toEqual(['1', '3']);
  });
});

describe('tables in a record', () => {
  test('a name that the record lacks is told at its cell', () => {
    const { findings } = readEpisode('title: T\nsetups: [bench]\nparts: [board]\ntables: r.csv\n', { 'r.csv': `${header}bench,stock,scene,power,baord,load,1,247.5,W\nbnch,stock,scene,power,board,load,1,247.5,W\n` });
    expect(findings.map((f) => [f.code, f.place.file, f.place.line, f.place.column, f.place.endColumn, f.suggest])).toEqual([
      ['unknown-name', 'data/example/r.csv', 2, 25, 30, 'board'],
      ['unknown-name', 'data/example/r.csv', 3, 1, 5, 'bench'],
    ]);
  });

  test('the same run in the record and in a table', () => {
    const { findings } = readEpisode('title: T\nreadings:\n  - for: {setup: bench, setting: stock, workload: scene}\n    power/board: {load: 247 W}\ntables: r.csv\n', { 'r.csv': header + good });
    expect(findings.map((f) => [f.code, spanOf(f), f.related?.[0]?.place.file])).toEqual([['reading-twice', 'data/example/r.csv:2:1-45', 'data/example/episode.yaml']]);
  });

  test('where the decimal sign is said, a comma before three digits is what it is', () => {
    const row = (value: string) => `${header.replace(/,/g, ';')}a;;;power;board;load;1;${value};W\n`;
    const read = (decimal: string, value: string) => {
      const { episode, findings } = readEpisode(`title: T\ntables: [{file: r.csv, delimiter: ";", decimal: ${decimal}}]\n`, { 'r.csv': row(value) });
      return [episode!.readings.map((r) => r.quantity.value.toString()), findings.map((f) => `${f.code}: ${f.message}`)];
    };
    expect(read('point', '1,234')).toEqual([['1234'], []]);
    expect(read('comma', '1,234')).toEqual([['1.234'], []]);
    expect(read('comma', '0,985')).toEqual([['0.985'], []]);
    expect(read('comma', '0.985')).toEqual([[], [expect.stringContaining('decimal point')]]);
  });

  test('with its own delimiter, decimal sign and encoding', () => {
    const { episode, findings } = readEpisode('title: T\ntables: [{file: r.csv, delimiter: ";", decimal: ",", encoding: latin-1}]\n', {
      'r.csv': Buffer.from(`${header.replaceAll(',', ';')}bench;stock;scene;temperature;core;load;1;61,50;°C\n`, 'latin1'),
    });
    expect(findings).toEqual([]);
    expect(episode!.readings.map((r) => `${r.quantity.value.toFixed(r.quantity.decimals)} ${r.quantity.unit.id}`)).toEqual(['61.50 degC']);
  });

  test('in another encoding than was said', () => {
    const { findings } = readEpisode('title: T\ntables: r.csv\n', { 'r.csv': Buffer.from(`${header}bench,stock,scene,temperature,core,load,1,61,°C\n`, 'latin1') });
    expect(findings.map((f) => [f.code, spanOf(f)])).toEqual([['text-encoding', 'data/example/r.csv:2:46-47']]);
  });
});

describe('names.csv', () => {
  test('kind, id, spoken forms', () => {
    const { value, findings } = readNames(new Source('n.csv', 'kind,id,spoken\nsetup,bench,the open bench; the bench\nphase,load,\n'));
    expect(findings).toEqual([]);
    expect(value!.map((n) => [n.kind, n.id, n.name, n.spoken])).toEqual([['setup', 'bench', 'the open bench', ['the open bench', 'the bench']], ['phase', 'load', 'load', []]]);
  });

  test.each<[string, string, string, string]>([
    ['an unknown kind', 'kind,id,spoken\n‹setups›,bench,the bench\n', 'table-value', 'did you mean setup?'],
    ['no id', 'kind,id,spoken\nsetup,‹›,the bench\n', 'table-id', 'missing'],
    ['a bad header', 'kind,id,‹sopken›\n', 'table-header', 'did you mean spoken?'],
  ])('%s', (_, text, code, words) => {
    const { text: plain, spans } = marked(text, 'n.csv');
    const { findings } = readNames(new Source('n.csv', plain));
    expect(spanOf(findings[0]!)).toBe(spans[0]);
    expect(findings[0]).toMatchObject({ code });
    expect(findings[0]!.message.toLowerCase()).toContain(words);
  });

  test('speak for the names of a record', () => {
    const { episode, findings } = readEpisode('title: T\nsetups: [bench]\nreadings: [{for: {setup: bench}, power: 1 W}]\nnames: n.csv\n', { 'n.csv': 'kind,id,spoken\nsetup,bench,on the bench\n' });
    expect(findings).toEqual([]);
    expect(episode!.setups.get('bench')!.spoken).toEqual(['on the bench', 'the bench', 'bench']);
  });
});
