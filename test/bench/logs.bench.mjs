import { spawnSync } from 'node:child_process';
import { closeSync, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { findDuckdb } from '../../dist/files/duckdb.js';
import { median, project, scratch } from './measure.mjs';

export const says = 'a numeric log of 200 MB, eleven columns: reading it with all figures against a bare csv-parse event loop that only counts rows; processor time, each in a process of its own; the same with engine: duckdb by the clock, as it works in two threads';

const columns = ['core', 'hot', 'memory', 'board', 'plug', 'clock', 'memory-clock', 'fan', 'load', 'rail'];

/** The same bytes each time. */
function generate(path, megabytes) {
  let state = 12345;
  const next = (n) => { state = (state * 1103515245 + 12345) & 0x7fffffff; return (state >> 8) % n; };
  const fd = openSync(path, 'w');
  let written = writeSync(fd, `t,${columns.join(',')}\n`);
  for (let i = 0; written < megabytes * 1e6;) {
    const lines = [];
    for (const end = i + 20_000; i < end; i++) {
      lines.push(`${i / 10 | 0}.${i % 10},6${next(9)}.${next(10)},7${next(9)}.${next(10)},8${next(3)}.${next(10)},2${40 + next(20)}.${10 + next(90)},1${10 + next(9)}.${10 + next(90)},${2500 + next(60)},9750,${1450 + next(30)},9${next(10)}.${next(10)},0.9${10 + next(40)}\n`);
    }
    written += writeSync(fd, lines.join(''));
  }
  closeSync(fd);
  return path;
}

const report = `const { user, system } = process.cpuUsage(from); console.log(JSON.stringify({ seconds: (user + system) / 1e6, clock: (performance.now() - begun) / 1e3, megabytes: process.resourceUsage().maxRSS / 1024, rows }));`;

/** `module` is where DuckDB is installed, if the record asks for it. */
const ours = (module) => `
  const load = (f) => import(${JSON.stringify(`${join(project, 'dist')}/`)} + f);
  const [{ LogText }, { sensorLog }, { LargeFile }, { unit }, fs] = [await load('logs/log-text.js'), await load('logs/sensor-log.js'), await load('files/large-file.js'), await load('quantities/index.js'), await import('node:fs')];
  const place = { file: '', line: 1, column: 1, endLine: 1, endColumn: 1 };
  const at = (name) => ({ name, place });
  const layout = { name: '', place, delimiter: ',', decimalComma: false, skip: 0, under: 0, header: true, missing: new Set(), energies: [], time: { kind: 'elapsed', at: at('t'), unit: unit('s') },
    windows: [{ phase: 'load', last: 3000.25, place }, { phase: 'early', from: 100.05, to: 2000.05, place }], columns: ${JSON.stringify(columns)}.map((name) => ({ at: at(name), measure: name, part: '', unit: unit('V'), take: 'mean' }))${module ? `, engine: { module: ${JSON.stringify(module)} }` : ''} };
  const begun = performance.now();
  const from = process.cpuUsage();
  const { value } = sensorLog(LogText.open('log.csv', new LargeFile(process.argv[1], fs, 0)), layout);
  const rows = value.values.length;
  ${report}`;

const bare = `
  const { parse } = await import('csv-parse');
  const { createReadStream } = await import('node:fs');
  let rows = 0;
  const begun = performance.now();
  const from = process.cpuUsage();
  await new Promise((done, fail) => {
    const parser = parse();
    parser.on('readable', () => { while (parser.read() !== null) rows++; }).on('end', done).on('error', fail);
    createReadStream(process.argv[1], { highWaterMark: 1 << 18 }).pipe(parser);
  });
  ${report}`;

/** The engine alone, without a look at structure, lines or times: exact sums, extremes and scatter of the whole and of buckets of 256 rows. */
const engine = (buckets) => `
  const { createRequire } = await import('node:module');
  const { DuckDBInstance } = createRequire((process.env.DUCKDB ?? process.cwd()) + '/package.json')('@duckdb/node-api');
  const names = ${JSON.stringify(columns)};
  const begun = performance.now();
  const from = process.cpuUsage();
  const connection = await (await DuckDBInstance.create(':memory:')).connect();
  const types = ['t', ...names].map((n) => "'" + n + "': 'DECIMAL(9,3)'").join(', ');
  const figures = names.map((n) => 'sum("' + n + '"), min("' + n + '"), max("' + n + '"), count("' + n + '")${buckets ? '' : `, stddev_samp("' + n + '"::DOUBLE)`}').join(', ');
  const log = "read_csv('" + process.argv[1] + "', auto_detect = false, header = true, columns = {" + types + "})";
  const read = await connection.runAndReadAll(${buckets ? "'SELECT b, ' + figures + ' FROM (SELECT (row_number() OVER () - 1) // 256 AS b, * FROM ' + log + ') GROUP BY b'" : "'SELECT ' + figures + ' FROM ' + log"});
  const rows = read.getRows().length;
  ${report}`;

function measured(script, path) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script, path], { cwd: project, encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
}

export function run() {
  const folder = scratch();
  const [small, large] = [50, 200].map((mb) => generate(join(folder, `${mb}.csv`), mb));
  const inTurns = (script) => Array.from({ length: 5 }, (_, i) => (i % 2 ? [measured(script, large), measured(bare, large)] : [measured(bare, large), measured(script, large)].reverse()));
  const pairs = inTurns(ours());
  const ratios = pairs.map(([a, b]) => a.seconds / b.seconds);
  const peak = (script) => [small, large].map((path) => measured(script, path).megabytes);
  const [[oursSmall, oursLarge], [bareSmall, bareLarge]] = [peak(ours()), peak(bare)];
  const against = median(pairs.map((p) => p[1].seconds));
  const engines = [false, true].flatMap((buckets) => {
    try {
      const { seconds, megabytes } = measured(engine(buckets), large);
      return [{ what: `DuckDB alone ÷ bare loop, ${buckets ? 'by buckets' : 'of the whole'}, processor time of all threads`, ratio: seconds / against, detail: `${(200 / seconds).toFixed(0)} MB/s, ${megabytes.toFixed(0)} MB` }];
    } catch (thrown) {
      return buckets || !/Cannot find module/.test(thrown.message) ? [] : [{ what: 'DuckDB is not installed (DUCKDB names a folder that has it)' }];
    }
  });
  const speed = (k) => (200 / median(pairs.map((p) => p[k].seconds))).toFixed(0);
  return [
    { what: 'our reader ÷ bare loop, processor time (a fifth: 5 times the throughput)', ratio: median(ratios), most: 0.2, detail: `${speed(0)} MB/s against ${speed(1)} MB/s; ${ratios.map((r) => (1 / r).toFixed(1)).join(' ')} times` },
    { what: 'our peak memory at 200 MB ÷ at 50 MB', ratio: oursLarge / oursSmall, most: 1.15, detail: `${oursSmall.toFixed(0)} and ${oursLarge.toFixed(0)} MB` },
    { what: 'that of the bare loop', ratio: bareLarge / bareSmall, detail: `${bareSmall.toFixed(0)} and ${bareLarge.toFixed(0)} MB` },
    ...withEngine(inTurns, peak),
    ...engines,
  ];
}

/** `engine: duckdb` in the record. */
function withEngine(inTurns, peak) {
  const module = findDuckdb();
  if (!module) return [];
  const pairs = inTurns(ours(module));
  const ratio = (of) => median(pairs.map(([a, b]) => of(a) / of(b)));
  const [small, large] = peak(ours(module));
  return [
    { what: 'with engine: duckdb ÷ bare loop, by the clock', ratio: ratio((r) => r.clock), most: 0.2, detail: `${(200 / median(pairs.map(([a]) => a.clock))).toFixed(0)} MB/s; ${pairs.map(([a, b]) => (b.clock / a.clock).toFixed(1)).join(' ')} times` },
    { what: 'the same, processor time of both threads', ratio: ratio((r) => r.seconds), detail: pairs.map(([a, b]) => (b.seconds / a.seconds).toFixed(1)).join(' ') + ' times' },
    { what: 'its peak memory at 200 MB ÷ at 50 MB', ratio: large / small, most: 1.15, detail: `${small.toFixed(0)} and ${large.toFixed(0)} MB` },
  ];
}
