import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { build, counts } from '../../pipeline/build.js';
import { failing, place, treeOf } from '../files/scratch.js';
import { bench, contradicted, one, quoting, sample } from './sample.js';

const sizes = ['1080x1080', '1080x1920', '1280x1024', '1920x1080', '3840x2160'];
const filesOf = (picture: string): string[] => [...sizes.map((size) => `bench/pictures/${picture}-${size}.png`), `bench/pictures/${picture}.json`, `bench/pictures/${picture}.svg`];

const names = (tree: Record<string, string>): string[] => Object.keys(tree).sort();

test('the layout of the outputs', async () => {
  const s = sample({ bench });
  const built = await s.build();
  expect(built.examined.flatMap((e) => e.findings.filter((f) => counts(f, 'error')))).toEqual([]);
  expect(names(s.outputs())).toEqual([
    'bench/facts.json', 'bench/findings.json', 'bench/index.html', 'bench/narration.md',
    ...['01-core', '02-board'].flatMap(filesOf), 'bench/pictures/index.html',
    'bench/readings.csv', 'index.html',
  ]);
});

test('pictures have the size that their name says, and the same pixels shape them', async () => {
  const s = sample({ bench });
  await s.build();
  for (const [width, height] of sizes.map((size) => size.split('x').map(Number) as [number, number])) {
    const png = fs.readFileSync(join(s.out, `bench/pictures/01-core-${width}x${height}.png`));
    // PNG (ISO/IEC 15948): signature, then IHDR with width and height as big-endian 32 bits, bit depth 8, colour type 6 (with alpha).
    expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect([png.readUInt32BE(16), png.readUInt32BE(20), png[24], png[25]]).toEqual([width, height, 8, 6]);
  }
});

test('facts and findings are lists, and a fact has all its fields', async () => {
  const s = sample();
  await s.build();
  const out = s.outputs();
  for (const id of ['bench', 'quoting']) {
    const facts = JSON.parse(Buffer.from(out[`${id}/facts.json`]!, 'latin1').toString()) as Record<string, unknown>[];
    expect(facts.length).toBeGreaterThan(1);
    for (const f of facts) {
      for (const field of ['id', 'kind', 'value', 'unit', 'shown', 'spoken', 'setup', 'setting', 'workload', 'measure', 'part', 'phase', 'against', 'from']) expect(f, String(f.id)).toHaveProperty(field);
      expect(f.value).toMatch(/^-?\d+(\.\d+)?$/);
    }
    expect(JSON.parse(out[`${id}/findings.json`]!)).toBeInstanceOf(Array);
  }
  const shown = JSON.parse(Buffer.from(out['bench/pictures/01-core.json']!, 'latin1').toString()) as { facts: { id: string; shown: string }[] };
  // 67, 67, 68 average to 67.33, and 59, 60, 60 to 59.67: shown in whole degrees as they were read.
  expect(shown.facts.map((f) => f.shown)).toEqual(expect.arrayContaining(['67 °C', '60 °C']));
});

test('readings.csv holds every reading and is RFC 4180', async () => {
  const s = sample({ bench });
  await s.build();
  const rows = Buffer.from(s.outputs()['bench/readings.csv']!, 'latin1').toString().split('\r\n');
  expect(rows[0]).toBe('setup,setting,workload,measure,part,phase,run,value,unit');
  expect(rows).toContain('bench,stock,loop,temperature,core,load,3,68,degC');
  expect(rows.at(-1)).toBe('');
});

test('an error stops everything before the first byte, and what stood stays', async () => {
  const s = sample();
  expect((await s.build()).published).toBeDefined();
  const before = s.outputs();
  s.write('bench/episode.yaml', contradicted);
  const built = await s.build();
  expect(built.fails).toBe(true);
  expect(built.published).toBeUndefined();
  expect(built.examined.find((e) => e.id === 'bench')!.findings.filter((f) => f.severity === 'error').map((f) => f.said)).toContain('29 K');
  expect(s.outputs()).toEqual(before);
});

test('nothing is made where the first build fails', async () => {
  const s = sample({ bench: contradicted });
  expect((await s.build()).fails).toBe(true);
  expect(fs.existsSync(s.out)).toBe(false);
});

test('a draft is built in spite of errors and every output says so', async () => {
  const s = sample({ bench: contradicted });
  const built = await s.build({ draft: true });
  expect(built.fails).toBe(true);
  const draft = s.outputs();
  const kind = (end: string): [string, string][] => Object.entries(draft).filter(([n]) => n.endsWith(end)).map(([n, t]) => [n, Buffer.from(t, 'latin1').toString()]);
  for (const [name, text] of [...kind('.html'), ...kind('.md'), ...kind('.csv')]) expect(text, name).toMatch(/draft/i);
  for (const [name, text] of kind('facts.json').concat(kind('findings.json'))) for (const item of JSON.parse(text) as { draft?: boolean }[]) expect(item.draft, name).toBe(true);
  for (const [name, text] of kind('.json').filter(([n]) => n.includes('/pictures/'))) expect((JSON.parse(text) as { draft?: boolean }).draft, name).toBe(true);
  // The stamp on pictures: the same record, not contradicted, drawn without one, has other pixels in every picture of what did not change.
  const clean = sample({ bench });
  await clean.build();
  const plain = clean.outputs();
  for (const name of Object.keys(plain).filter((n) => /02-board.*\.(png|svg)$/.test(n))) expect(draft[name] === plain[name], name).toBe(false);
  const stamped = sample({ bench });
  await stamped.build({ draft: true });
  const again = stamped.outputs();
  for (const name of Object.keys(plain).filter((n) => /02-board.*\.(png|svg)$/.test(n))) expect(draft[name] === again[name], name).toBe(true);
});

test('a draft of what is sound says that it is a draft, and nothing of errors', async () => {
  const s = sample();
  await s.build({ draft: true });
  const words = (): string[] => Object.entries(s.outputs()).filter(([n]) => /\.(html|md)$/.test(n)).map(([, t]) => Buffer.from(t, 'latin1').toString());
  for (const text of words()) {
    expect(text).toMatch(/draft/i);
    expect(text).not.toMatch(/in spite of errors|passed its checks/);
  }
  s.write('bench/episode.yaml', contradicted);
  await s.build({ draft: true });
  expect(words().filter((t) => /in spite of errors|passed its checks/.test(t))).toHaveLength(3);
  // What counts as an error is asked anew.
  const doubtful = sample({ bench: bench.replace('load: 67 67 68 °C', 'load: 61 67 74 °C') });
  const narration = (): string => doubtful.outputs()['bench/narration.md']!;
  await doubtful.build({ draft: true });
  expect(narration()).toContain('nothing found counts as an error');
  await doubtful.build({ draft: true, failOn: 'warning' });
  expect(narration()).toContain('in spite of errors');
});

test.each(['data', 'data/bench', '.'])('outputs to %j would be written over the sources: refused before anything is read', async (out) => {
  const table = 'setup,setting,workload,measure,part,phase,run,value,unit\nbench,stock,loop,temperature,core,load,4,67,degC\n';
  const s = sample({ bench: bench.replace('readings:', 'tables: [readings.csv]\nreadings:') });
  s.write('bench/readings.csv', table);
  const before = treeOf(s.folder);
  await expect(s.build({ out: join(s.folder, out), draft: true })).rejects.toThrow(/Outputs cannot go to .*where the records are/);
  expect(treeOf(s.folder)).toEqual(before);
});

test('each episode and each lot of pictures is named before it is begun, and what is known from before is not', async () => {
  const s = sample(undefined, 'own');
  const told: string[] = [];
  const progress = { stage: (name: string, n: number) => void told.push(`${name} ${n}`), step: () => undefined, begin: (what: string) => void told.push(what) };
  await build(s.options, progress);
  expect(told).toEqual(['Checking 2', 'bench', 'quoting', 'Drawing 3', 'bench', 'quoting']);
  told.length = 0;
  s.write('quoting/episode.yaml', quoting.replace('61 62 61', '62 62 61'));
  await build(s.options, progress);
  expect(told).toEqual(['Checking 2', 'quoting', 'Drawing 1', 'quoting']);
});

test('a build after a draft leaves no stamp behind', async () => {
  const s = sample({ bench });
  await s.build({ draft: true });
  await s.build();
  const clean = sample({ bench });
  await clean.build();
  expect(s.outputs()).toEqual(clean.outputs());
});

test('with nothing changed nothing is drawn and nothing is written', async () => {
  const s = sample(undefined, 'own');
  const first = await s.build();
  expect(first.drawn).toBe(3);
  const stamps = (): [string, number][] => names(s.outputs()).map((n) => [n, fs.statSync(join(s.out, n)).mtimeMs]);
  const before = stamps();
  const second = await s.build();
  expect([second.drawn, second.reused, second.published!.written, second.published!.removed]).toEqual([0, 0, [], []]);
  expect(stamps()).toEqual(before);
  expect(second.examined).toEqual(first.examined);
});

test('one edited reading rebuilds what shows it and nothing else', async () => {
  const s = sample(undefined, 'own');
  await s.build();
  // 199 to 202: the mean of the board power goes from 199.67 to 200.67; no temperature changes.
  s.write('bench/episode.yaml', bench.replace('load: 199 200 200 W', 'load: 202 200 200 W'));
  const built = await s.build();
  expect(built.drawn).toBe(1);
  expect(built.published!.written.filter((n) => n.includes('/pictures/'))).toEqual([...filesOf('02-board'), 'bench/pictures/index.html']);
  expect(built.published!.written.filter((n) => n.startsWith('quoting/'))).toEqual([]);
});

test('an edit in a quoted episode reaches the episode that quotes', async () => {
  const s = sample();
  await s.build();
  s.write('bench/episode.yaml', bench.replace('load: 67 67 68 °C', 'load: 69 69 70 °C').replace('is: 29 K', 'is: 31 K'));
  const built = await s.build();
  expect(built.examined.find((e) => e.id === 'quoting')!.findings.map((f) => f.code)).toContain('quote-changed');
  expect(built.published!.written).toContain('quoting/facts.json');
});

test('pictures that an edit takes back come from the cache', async () => {
  const s = sample(undefined, 'own');
  await s.build();
  const before = s.outputs();
  s.write('bench/episode.yaml', bench.replace('load: 199 200 200 W', 'load: 202 200 200 W'));
  await s.build();
  s.write('bench/episode.yaml', bench);
  expect((await s.build()).drawn).toBe(0);
  expect(s.outputs()).toEqual(before);
});

test('an episode that goes takes its outputs along; files of others stay', async () => {
  const s = sample();
  await s.build();
  place(s.out, 'quoting/notes.txt', 'mine');
  place(s.out, 'showcase/picture.png', 'kept');
  fs.rmSync(join(s.data, 'quoting'), { recursive: true });
  const built = await s.build();
  expect(built.published!.removed).toContain('quoting/index.html');
  expect(names(s.outputs()).filter((n) => !n.startsWith('bench/'))).toEqual(['index.html', 'quoting/notes.txt', 'showcase/picture.png']);
  expect(s.outputs()['index.html']).not.toContain('Follow-up');
});

test('a picture no longer asked for goes, and the others keep their bytes', async () => {
  const s = sample({ bench });
  await s.build();
  const before = s.outputs();
  s.write('bench/episode.yaml', bench.replace(/ {2}- \{chart: bars, name: board.*\n/, ''));
  await s.build();
  expect(names(before).filter((n) => !names(s.outputs()).includes(n))).toEqual(filesOf('02-board'));
  expect(s.outputs()['bench/pictures/01-core-1920x1080.png']).toBe(before['bench/pictures/01-core-1920x1080.png']);
});

test('one episode alone can be built; the others stay and the index lists all that stand', async () => {
  const s = sample();
  await s.build({ only: ['bench'] });
  expect(names(s.outputs()).some((n) => n.startsWith('quoting/'))).toBe(false);
  await s.build({ only: ['quoting'] });
  const all = sample();
  await all.build();
  expect(s.outputs()).toEqual(all.outputs());
});

test('outputs that were lost or damaged are made again', async () => {
  const s = sample();
  await s.build();
  const before = s.outputs();
  fs.rmSync(join(s.out, 'bench/pictures/01-core.svg'));
  place(s.out, 'quoting/index.html', 'damaged');
  fs.rmSync(join(s.out, 'index.html'));
  const built = await s.build();
  expect(built.drawn).toBe(0);
  expect(s.outputs()).toEqual(before);
  fs.rmSync(join(s.out, '.manifest.json'));
  await s.build();
  expect(s.outputs()).toEqual(before);
});

test('a cache that was lost, damaged or switched off changes no byte', async () => {
  const s = sample(undefined, 'own');
  await s.build();
  const before = s.outputs();
  for (const harm of [
    () => fs.rmSync(join(s.folder, '.cache'), { recursive: true }),
    () => { for (const [dir] of [['episodes'], ['png-1920'], ['svg']]) for (const n of fs.readdirSync(join(s.folder, '.cache', dir!), { recursive: true, encoding: 'utf8' })) if (fs.statSync(join(s.folder, '.cache', dir!, n)).isFile()) fs.writeFileSync(join(s.folder, '.cache', dir!, n), '{}'); },
  ]) {
    harm();
    fs.rmSync(s.out, { recursive: true });
    await s.build();
    expect(s.outputs()).toEqual(before);
  }
  fs.rmSync(s.out, { recursive: true });
  await s.build({ cache: undefined });
  expect(s.outputs()).toEqual(before);
});

test('episodes that quote each other are a finding in each, whatever was asked first', async () => {
  const circle = bench.replace('readings:', 'quotes:\n  - {from: quoting, fact: "mean:after/stock/loop/temperature/core/load", as: other/stock/loop/temperature/core/load}\nreadings:').replace('setups: {', 'setups: {other: Other, ');
  const s = sample({ bench: circle, quoting });
  for (const only of [[], ['bench'], ['quoting']]) {
    const { examined } = await s.check({ only, cache: undefined });
    for (const e of examined) expect([e.id, e.findings.map((f) => f.code)]).toEqual([e.id, expect.arrayContaining(['quote-cycle'])]);
  }
});

test('check writes nothing beside the cache, and remembers what it found', async () => {
  const s = sample({ bench: contradicted }, 'own');
  const first = await s.check();
  expect(first.fails).toBe(true);
  expect(fs.readdirSync(s.folder).sort()).toEqual(['.cache', 'data']);
  expect(await s.check()).toEqual(first);
  fs.rmSync(join(s.folder, '.cache'), { recursive: true });
  expect(await s.check()).toEqual(first);
});

test('warnings stop a build only where they are asked to', async () => {
  const doubtful = bench.replace('load: 67 67 68 °C', 'load: 61 67 74 °C').replace('is: 29 K', 'is: 29 K');
  const s = sample({ bench: doubtful });
  const codes = (await s.check()).examined[0]!.findings.filter((f) => f.severity === 'warning');
  expect(codes.length).toBeGreaterThan(0);
  expect((await s.check()).fails).toBe(false);
  expect((await s.build({ failOn: 'warning' })).published).toBeUndefined();
  expect((await s.build()).published).toBeDefined();
});

test('what is wrong with a picture stands on the contact sheet, and not on the page for viewers', async () => {
  const system = `system: [{part: Case, detail: "${'closed-at-the-front-'.repeat(3)}"}]\n`;
  const s = sample({ bench: bench.replace(/pictures:[^]*/, `${system}pictures:\n  - {graphic: parts, name: parts}\n`) });
  await s.build();
  const [page, sheet] = ['bench/index.html', 'bench/pictures/index.html'].map((name) => Buffer.from(s.outputs()[name]!, 'latin1').toString());
  expect(sheet).toContain('until then there is none of 1080×1920');
  expect(sheet).toContain('label-too-long');
  for (const words of ['until then', 'label-too-long']) expect(page).not.toContain(words);
});

test('an episode whose folder cannot be read stops the build, and its outputs stay', async () => {
  const s = sample({ bench: one, quoting });
  await s.build();
  const before = s.outputs();
  await expect(s.build({ disk: failing(['statSync'], 'EACCES', (path) => path.startsWith(join(s.data, 'quoting'))) })).rejects.toThrow(/^Cannot read the episode folder .*quoting: permission is denied/);
  expect(s.outputs()).toEqual(before);
});
