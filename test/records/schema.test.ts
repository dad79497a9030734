// The published schema is the reader's own, and says of a record what the reader says.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { newRecord, recordSchema, shippedThemes, themeSchema } from '../../pipeline/records/index.js';
import { readEpisode } from './reading.js';

const root = join(import.meta.dirname, '../..');
const valid = new Ajv2020({ strict: true, allowUnionTypes: true, allowMatchingProperties: true, formats: { date: true } }).compile(recordSchema());
const said = (text: string) => (valid(parse(text)) ? '' : JSON.stringify(valid.errors, null, 1));

test('templates/episode.schema.json is what the code says (node dist/cli.js schema prints it)', () => {
  expect(JSON.parse(readFileSync(join(root, 'templates/episode.schema.json'), 'utf8'))).toEqual(recordSchema());
});

test('templates/theme.schema.json is what the code says (node dist/cli.js schema theme prints it), and the shipped themes are valid', () => {
  const schema = themeSchema();
  expect(JSON.parse(readFileSync(join(root, 'templates/theme.schema.json'), 'utf8'))).toEqual(schema);
  const fits = new Ajv2020({ strict: true, allowUnionTypes: true, allowMatchingProperties: true }).compile(schema);
  for (const name of shippedThemes) expect(fits(parse(readFileSync(join(root, `templates/themes/${name}.yaml`), 'utf8'))), JSON.stringify(fits.errors)).toBe(true);
});

test('every field has a description for the editor to show', () => {
  const bare: string[] = [];
  const walk = (node: unknown, path: string) => {
    if (typeof node !== 'object' || node === null) return;
    for (const [k, v] of Object.entries(node)) {
      if (k === 'properties') for (const [name, field] of Object.entries(v as object)) if (!(field as { description?: string }).description && !(field as { $ref?: string }).$ref) bare.push(`${path}/${name}`);
      walk(v, `${path}/${k}`);
    }
  };
  walk(recordSchema(), '');
  expect(bare).toEqual([]);
});

describe('takes', () => {
  test('the record with every field', () => expect(said(readFileSync(join(import.meta.dirname, 'sound.yaml'), 'utf8'))).toBe(''));
  test('a new record', () => expect(said(newRecord({ title: 'T' }))).toBe(''));
  test.each(readdirSync(join(root, 'data')))('data/%s', (id) => expect(said(readFileSync(join(root, 'data', id, 'episode.yaml'), 'utf8'))).toBe(''));
});

describe('refuses, as the reader does', () => {
  test.each([
    ['no title', 'readings: []'],
    ['an unknown field', 'title: T\ntitel: U'],
    ['a mistyped field within', 'title: T\nsetups: {a: {nam: A}}'],
    ['a choice that is none', 'title: T\nmeasures: {power: {better: less}}'],
    ['a text for a list', 'title: T\ninstruments: meter'],
    ['a layout field mistyped', 'title: T\nlayouts: {a: {delimeter: ","}}'],
    ['a log without its layout', 'title: T\nlogs: [{files: a.csv}]'],
    ['an acceptance without its reason', 'title: T\naccept: [{finding: a, subject: b}]'],
    ['a stated value of no kind', 'title: T\nstated: [{rised: a, is: 1 K}]'],
    ['a run set aside without its reason', 'title: T\naside: [{reading: a, run: 1}]'],
    ['a list of readings for a map', 'title: T\nreadings: [1, 2]'],
    ['a severity that is none', 'title: T\nseverities: {a: warn}'],
  ])('%s', (_, text) => {
    expect(said(text)).not.toBe('');
    expect(readEpisode(text).findings.some((f) => f.severity === 'error')).toBe(true);
  });
});
