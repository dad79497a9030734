#!/usr/bin/env node
// Checks trial folders against themselves: node verify.mjs FOLDER...   (exit 0 = all right)
//
// Every claim of claims.csv is worked out again from readings.csv, each reading as the exact mean over its runs:
//   raw, mean, constant  one reference; several: the median of them; a run named on the line: that run
//   rise, difference     two references: the gap; four: 100*a/b - 100*c/d in percentage points;
//                        one and a set: the gap between it and the set's median; two equal sets: the gap between medians
//   percent_change       two references, base first (or last): the change in percent of the base
//   percent_of           100*a/b;  ratio: a/b, or (a-b)/(c-d) of four references
//   rank                 the place of the first reference among all; ties share the better place
//   range                two rows in turn: the least and the greatest mean (or single run)
//   count                references, or distinct setups, settings, ..., or runs, or how many references lie beyond a
//                        number said on the same line, or COUNT below
//   distractor           no reference
// Sizes carry no sign. Then: the number in words or digits is the one in 'spoken'; it is a fair way to say the size at the
// precision said, given hedges ("about", "just under", "or so"); the claims of a line occur in their order; no number is
// left without a row; every edit of mistakes.csv applies in exactly one place and changes the line.
import { readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

// ---- exact fractions
const gcd = (a, b) => { while (b) [a, b] = [b, a % b]; return a < 0n ? -a : a; };
export class Q {
  constructor(n, d = 1n) { if (d < 0n) { n = -n; d = -d; } const g = gcd(n, d) || 1n; this.n = n / g; this.d = d / g; }
  static of(x) { const [a, b = ''] = String(x).split('.'); return new Q(BigInt(a + b), 10n ** BigInt(b.length)); }
  add(o) { return new Q(this.n * o.d + o.n * this.d, this.d * o.d); }
  sub(o) { return new Q(this.n * o.d - o.n * this.d, this.d * o.d); }
  mul(o) { return new Q(this.n * o.n, this.d * o.d); }
  div(o) { return new Q(this.n * o.d, this.d * o.n); }
  abs() { return this.n < 0n ? new Q(-this.n, this.d) : this; }
  cmp(o) { const x = this.n * o.d - o.n * this.d; return x < 0n ? -1 : x > 0n ? 1 : 0; }
  rounded(places) { const p = 10n ** BigInt(places), x = this.abs(); return new Q((2n * x.n * p + x.d) / (2n * x.d), p); } // half away, size only
  fixed(places) { const s = this.rounded(places).mul(new Q(10n ** BigInt(places))).n.toString().padStart(places + 1, '0'); return places ? `${s.slice(0, -places)}.${s.slice(-places)}` : s; }
}
const HUNDRED = new Q(100n), max = (a, b) => (a.cmp(b) > 0 ? a : b);

// ---- tables
export function parse(text) {
  const out = []; let row = [], cell = '', quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) { if (c !== '"') cell += c; else if (text[i + 1] === '"') { cell += '"'; i++; } else quoted = false; }
    else if (c === '"') quoted = true;
    else if (c === ',') { row.push(cell); cell = ''; }
    else if (c === '\n') { row.push(cell); out.push(row); row = []; cell = ''; }
    else if (c !== '\r') cell += c;
  }
  if (cell || row.length) { row.push(cell); out.push(row); }
  return out;
}
const HEADS = { 'readings.csv': 'setup,setting,workload,measure,part,phase,run,value,unit', 'names.csv': 'kind,id,spoken', 'claims.csv': 'id,line,text,kind,refs,expected,spoken', 'mistakes.csv': 'id,line,find,replace,kind,why' };
const KINDS = 'raw mean rise difference percent_change percent_of ratio rank count constant range distractor'.split(' ');
const MISTAKES = 'wrong_difference wrong_percent percent_base swapped unit_slip direction rank stale transposed rounding points_vs_percent inconsistent_repeat wrong_count ratio wrong_subject'.split(' ');
const AXES = ['setup', 'setting', 'workload', 'measure', 'part', 'phase'];
function table(folder, file, bad) {
  const [head, ...body] = parse(readFileSync(join(folder, file), 'utf8'));
  if (head.join() !== HEADS[file]) bad(`${file}: header is ${head.join()}`);
  return body.map((r) => { if (r.length !== head.length) bad(`${file}: ${r.length} cells in ${r.join()}`); return Object.fromEntries(head.map((h, i) => [h, r[i] ?? ''])); });
}

// ---- numbers as they are said
const ONES = 'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');
const PARTS = { half: [1n, 2n], halves: [1n, 2n], third: [1n, 3n], thirds: [1n, 3n], quarter: [1n, 4n], quarters: [1n, 4n], fifth: [1n, 5n], fifths: [1n, 5n], tenth: [1n, 10n], tenths: [1n, 10n] };
const TIMES = { once: 1, twice: 2, double: 2, thrice: 3, triple: 3, couple: 2, dozen: 12 };
const CARD = Object.fromEntries([...ONES.map((w, i) => [w, i]), ...TENS.map((w, i) => [w, 20 + 10 * i]), ['nought', 0], ['oh', 0], ['a hundred', 100]]);
const isCard = (t) => Object.hasOwn(CARD, t), isBig = (t) => t === 'hundred' || t === 'thousand';
/** The first number said in a text: its value and its decimals (1 for a half; null for thirds, twice...). */
export function said(text) {
  const mark = /\[(?:(\d+):)?(\d+):(\d\d)\]/.exec(text);
  if (mark) return { value: Q.of(Number(mark[1] ?? 0) * 3600 + mark[2] * 60 + Number(mark[3])), decimals: 0 };
  const t = text.toLowerCase().match(/\d+(?:,\d{3})*(?:\.\d+)?|[a-z]+/g) ?? [];
  for (let i = 0; i < t.length; i++) {
    let value, decimals = 0;
    if (/\d/.test(t[i])) { const s = t[i].replaceAll(',', ''); value = Q.of(s); decimals = (s.split('.')[1] ?? '').length; i++; }
    else if (Object.hasOwn(TIMES, t[i])) return { value: Q.of(TIMES[t[i]]), decimals: null };
    else if (Object.hasOwn(PARTS, t[i]) && (i > 0 || !ORDINALS.includes(t[i]) || t[i + 1] === 'of')) return { value: new Q(...PARTS[t[i]]), decimals: t[i] === 'half' ? 1 : null };
    else if (ORDINALS.includes(t[i])) return { value: Q.of(ORDINALS.indexOf(t[i]) + 1), decimals: 0 };
    else if (isCard(t[i]) || isBig(t[i]) || (t[i] === 'point' && isCard(t[i + 1] ?? ''))) {
      let whole = 0, group = 0;
      for (; i < t.length && (isCard(t[i]) || isBig(t[i]) || (t[i] === 'and' && (whole || group >= 100) && isCard(t[i + 1] ?? ''))); i++) {
        if (t[i] === 'hundred') group = (group || 1) * 100;
        else if (t[i] === 'thousand') { whole += (group || 1) * 1000; group = 0; } else if (t[i] !== 'and') group += CARD[t[i]];
      }
      value = Q.of(whole + group);
    } else continue;
    if (t[i] === 'point') { let s = ''; for (i++; i < t.length && (CARD[t[i]] < 10 || /^\d$/.test(t[i])); i++) s += CARD[t[i]] ?? t[i]; value = value.add(new Q(BigInt(s), 10n ** BigInt(s.length))); decimals = s.length; }
    if (t[i] === 'and' && t[i + 1] === 'a' && PARTS[t[i + 2]]) return { value: value.add(new Q(...PARTS[t[i + 2]])), decimals: t[i + 2] === 'half' ? 1 : null };
    if (PARTS[t[i]] && !/^half$/.test(t[i])) return { value: value.mul(new Q(...PARTS[t[i]])), decimals: null };
    return { value, decimals };
  }
  return /^an? /i.test(text) ? { value: Q.of(1), decimals: 0 } : null;
}
// "two hours and ten", "an hour and five minutes": one time in minutes, where a claim says it ("and a half" is no such time)
const CLOCK = /^(.+?) hours? (?:and )?((?!an? )\S+(?: minutes?)?)$/i;
export function clock(text) {
  const m = CLOCK.exec(text), hours = m && said(m[1] + ' '), rest = m && said(m[2]);
  return hours && rest?.decimals === 0 ? { value: hours.value.mul(Q.of(60)).add(rest.value), decimals: 0 } : null;
}
// a unit said in another size than the readings': [said, unit of the readings, how many said units make one]
const SIZES = [[/millivolts?|\bmV\b/i, 'V', 1000n], [/\bvolts?\b/i, 'mV', [1n, 1000n]], [/gigabytes? (?:per|a) second|GB\/s/i, 'MB/s', [1n, 1000n]], [/\bminutes?\b/i, 's', [1n, 60n]], [/\bseconds?\b/i, 'min', 60n],
  [/gigahertz|GHz/i, 'MHz', [1n, 1000n]], [/\bkilograms?\b|\bkilos?\b/i, 'g', [1n, 1000n]], [/\bhours?\b/i, 'min', [1n, 60n]], [/terabytes?|\bTB\b/i, 'GB', [1n, 1000n]], [/kilowatts?/i, 'W', [1n, 1000n]]];

// ---- hedges: which sizes may be said so
const LEAD = '\\s+(?:a |an |the )?(?:full |whole |good )?$';
const HEDGES = [
  [`(?:just |a touch |a shade |a hair |a little |slightly |a bit )(?:under|below|less than|shy of|short of)|nearly|almost|not quite|barely`, 'under'],
  [`(?:just |a bit |a little |a touch |a shade |a hair |slightly )(?:over|above|more than|north of)`, 'over'], ['within|no more than|at most|up to', 'within'],
  ['less than|under|below|fewer than', 'less'], ['more than|(?<!hands )over|at least|north of|above|upwards of', 'more'], ['about|around|roughly|close to|near enough|something like|some|call it|approximately|maybe|say', 'about']]
  .map(([words, name]) => [new RegExp(`(?:^|[^\\w-])(?:${words})${LEAD}`, 'i'), name]);
const AFTER = [[/^(?:\s+\S+)?\s+(?:or so|or thereabouts|give or take|ish)\b|^-?ish\b/i, 'about'], [/^(?:\s+\S+)?\s+and a bit\b/i, 'over']];
function hedge(line, start, end) {
  return HEDGES.find(([re]) => re.test(line.slice(0, start)))?.[1] ?? AFTER.find(([re]) => re.test(line.slice(end)))?.[1] ?? null;
}
function fair(kind, size, say, decimals, how) {
  if (['rank', 'count', 'constant'].includes(kind)) return size.cmp(say) === 0;
  const step = decimals === null ? new Q(0n) : new Q(1n, 10n ** BigInt(decimals)), share = (n) => say.mul(new Q(BigInt(n), 100n));
  const near = max(step.div(Q.of(2)), share(5)), far = max(step, share(20)), off = size.sub(say), below = off.cmp(Q.of(0)) < 0, above = off.cmp(Q.of(0)) > 0;
  const exactly = () => decimals !== null && kind !== 'ratio' && size.rounded(decimals).cmp(say) === 0;
  if (how === 'under') return below && off.abs().cmp(near) <= 0;
  if (how === 'over') return above && off.cmp(near) <= 0;
  if (how === 'within') return !above && off.abs().cmp(share(60)) <= 0;
  if (how === 'less') return below && off.abs().cmp(far) <= 0;
  if (how === 'more') return above && off.cmp(far) <= 0;
  if (how === 'about') return exactly() || off.abs().cmp(near) <= 0;
  return decimals === null || kind === 'ratio' ? off.abs().cmp(share(3)) <= 0 : exactly();
}

// ---- working out a claim
const COUNT = { 'tower-coolers c73': (v) => v.filter((x) => x.cmp(Q.of(1000)) > 0).length }; // "pass the kilogram mark"
const LOW = /cool|quiet|slow|low|small|least|short|light|thin|cheap|dark/i, HIGH = /hot|loud|fast|high|most|long|great|warm|heav|strong|thick|large|big|bright/i;
const RUN = /\b(?:(first|second|third) (?:single )?run|run (one|two|three|1|2|3))\b/i;
const mean = (runs) => runs.reduce((a, b) => a.add(b)).div(new Q(BigInt(runs.length)));
function median(v) { const s = [...v].sort((a, b) => a.cmp(b)), h = s.length >> 1; return s.length % 2 ? s[h] : s[h - 1].add(s[h]).div(Q.of(2)); }
/** The sizes a row may stand for, the most likely first. */
function sizes(row, refs, readings, line, rest, trial) {
  const runs = refs.map((r) => readings.get(r).runs.map((x) => x.value)), v = runs.map(mean), n = v.length, k = row.kind;
  if (k !== 'count' && k !== 'distractor' && new Set(refs.map((r) => readings.get(r).unit)).size !== 1) throw new Error('the references differ in unit');
  const want = (ok) => { if (!ok) throw new Error(`${k} with ${n} references`); };
  if (k === 'raw' || k === 'mean' || k === 'constant') {
    const m = RUN.exec(line), word = (m?.[1] ?? m?.[2] ?? '').toLowerCase(), at = { first: 0, one: 0, 1: 0, second: 1, two: 1, 2: 1, third: 2, three: 2, 3: 2 }[word];
    if (k === 'constant' && runs.some((r) => r.length > 1)) throw new Error('a constant has no runs');
    return n > 1 ? [median(v)] : k === 'raw' && at !== undefined && runs[0][at] ? [runs[0][at]] : [v[0]];
  }
  if (k === 'rise') { want(n === 2); if (v[1].cmp(v[0]) <= 0) throw new Error('no rise'); return [v[1].sub(v[0])]; }
  if (k === 'difference') {
    if (n === 2) return [v[0].sub(v[1])];
    if (n === 4) return [v[0].div(v[1]).sub(v[2].div(v[3])).mul(HUNDRED)];
    if (n % 2 === 0 && n > 4) return [median(v.slice(0, n / 2)).sub(median(v.slice(n / 2)))];
    want(n > 3); return [v[0].sub(median(v.slice(1)))];
  }
  if (k === 'percent_change') { want(n === 2); return [[v[0], v[1]], [v[1], v[0]]].map(([a, b]) => b.sub(a).div(a).mul(HUNDRED)); }
  if (k === 'percent_of') { want(n === 2); return [v[0].div(v[1]).mul(HUNDRED)]; }
  if (k === 'ratio') { want(n === 2 || n === 4); return [n === 2 ? v[0].div(v[1]) : v[0].sub(v[1]).div(v[2].sub(v[3]))]; }
  if (k === 'rank') {
    want(n > 1);
    const place = (s) => Q.of(1 + v.filter((x) => x.cmp(v[0]) === s).length), up = place(-1), down = place(1), low = LOW.test(row.text), high = HIGH.test(row.text);
    return low && !high ? [up] : high && !low ? [down] : [up, down];
  }
  if (k === 'range') {
    const end = (list) => list.reduce((a, b) => ((a.cmp(b) < 0) === row.least ? a : b));
    return [end(v), end(runs.flat())];
  }
  if (k === 'count') {
    const rule = COUNT[`${trial} ${row.id}`], sets = AXES.map((_, i) => new Set(refs.map((r) => r.split('/')[i])).size);
    const beyond = rest.flatMap((x) => [(c) => c < 0, (c) => c <= 0, (c) => c > 0, (c) => c >= 0].map((f) => v.filter((y) => f(y.cmp(x))).length));
    return (rule ? [rule(v)] : [n, ...sets, runs[0].length, ...beyond]).map((x) => Q.of(x));
  }
  throw new Error(`unknown kind ${k}`);
}

const NUMBERS = new RegExp(`\\d+(?:[.,:]\\d+)*|\\b(?:${[...ONES.slice(2), ...TENS, 'hundred', 'thousand', 'half', 'quarters?', 'thirds', 'twice', 'double', 'triple', 'nought', 'dozen'].join('|')})\\b(?! load| speed)`, 'gi');
export function check(folder) {
  const problems = [], bad = (m) => problems.push(m), trial = basename(folder);
  const rows = table(folder, 'readings.csv', bad), names = table(folder, 'names.csv', bad), claims = table(folder, 'claims.csv', bad), mistakes = table(folder, 'mistakes.csv', bad);
  const lines = readFileSync(join(folder, 'script.md'), 'utf8').split('\n'), readings = new Map();
  for (const r of rows) {
    const key = AXES.map((a) => r[a]).join('/'), x = readings.get(key) ?? { unit: r.unit, runs: [] };
    if (x.unit !== r.unit) bad(`readings: two units for ${key}`);
    if (x.runs.some((y) => y.run === r.run)) bad(`readings: run ${r.run} twice for ${key}`);
    x.runs.push({ run: r.run, value: Q.of(r.value) }); readings.set(key, x);
  }
  for (const kind of AXES.slice(0, 5)) {
    const known = new Set(names.filter((n) => n.kind === kind).map((n) => n.id));
    for (const id of new Set(rows.map((r) => r[kind]).filter(Boolean))) if (!known.has(id) && kind !== 'workload') bad(`names: no ${kind} ${id}`);
  }
  const masked = [...lines], at = new Map(), seen = new Map();
  if (new Set(claims.map((c) => c.id)).size !== claims.length) bad('claims: an id occurs twice');
  for (const c of claims) {
    const who = `${c.id} '${c.text}' (line ${c.line}, ${c.kind})`, i = Number(c.line) - 1, line = lines[i] ?? '', start = line.indexOf(c.text, at.get(i) ?? 0), end = start + c.text.length;
    if (!KINDS.includes(c.kind)) bad(`${who}: unknown kind`);
    if (start < 0) { bad(`${who}: not there, or out of order`); continue; }
    at.set(i, end); masked[i] = masked[i].slice(0, start) + '·'.repeat(c.text.length) + masked[i].slice(end);
    const place = ORDINALS.findIndex((o) => new RegExp(`\\b${o}\\b`, 'i').test(c.text)), spoken = Q.of(c.spoken);
    const s = c.kind !== 'rank' ? (c.kind !== 'distractor' && clock(c.text)) || said(c.text) : { value: /\blast\b/.test(c.text) ? spoken : Q.of(place < 0 ? 1 : place + 1), decimals: 0 };
    if (!s) { bad(`${who}: no number in it`); continue; }
    if (s.value.sub(spoken).abs().cmp(new Q(1n, 1000n)) > 0) bad(`${who}: the words say ${s.value.fixed(3)}, the table ${c.spoken}`);
    if (c.kind === 'distractor') { if (c.refs || c.expected) bad(`${who}: a distractor rests on nothing`); continue; }
    const refs = c.refs.split(' | '), missing = refs.filter((r) => !readings.has(r));
    if (missing.length) { bad(`${who}: no reading ${missing.join(', ')}`); continue; }
    if (c.kind === 'range') { const k = `${c.line} ${c.refs}`; seen.set(k, (seen.get(k) ?? 0) + 1); c.least = seen.get(k) % 2 === 1; }
    try {
      const unit = readings.get(refs[0]).unit, rest = claims.filter((x) => x.line === c.line && x !== c).map((x) => Q.of(x.spoken || '0'));
      const size = !CLOCK.test(c.text) && SIZES.find(([re, u]) => u === unit && re.test(c.text)), factor = size ? new Q(...[size[2]].flat()) : Q.of(1), plain = ['raw', 'mean', 'constant', 'rise', 'difference', 'range'].includes(c.kind);
      const exact = sizes(c, refs, readings, line, rest, trial).map((x) => (plain ? x.mul(factor) : x).abs()), found = exact.find((x) => x.fixed(4) === c.expected);
      if (!found) { bad(`${who}: expected ${c.expected}, worked out ${[...new Set(exact.map((x) => x.fixed(4)))].join(' or ')}`); continue; }
      const percent = /percent|per cent|%/.test(c.text) && !/points?/.test(c.text), how = hedge(line, start, end);
      if (percent && !/^percent_/.test(c.kind) && (unit !== '%' || c.kind === 'difference' || c.kind === 'rise')) bad(`${who}: percent of what?`);
      if (/\bpoints?\b/.test(c.text) && !/\bpoint\s+\w+/.test(c.text) && !(c.kind === 'difference' && (unit === '%' || refs.length === 4)) && !(c.kind === 'rise' && unit === '%')) bad(`${who}: points of what?`);
      if (!fair(c.kind, found, spoken, s.decimals, how)) bad(`${who}: ${c.spoken} is no fair way to say ${found.fixed(4)} (${how ?? 'no hedge'})`);
    } catch (e) { bad(`${who}: ${e.message}`); }
  }
  masked.forEach((l, i) => { l = l.replace(RUN, ''); if (!lines[i].startsWith('[') || /^\[\d/.test(lines[i])) for (const m of l.matchAll(NUMBERS)) bad(`line ${i + 1}: '${m[0]}' has no row: ${lines[i]}`); });
  for (const m of mistakes) {
    const line = lines[Number(m.line) - 1] ?? '', found = line.split(m.find).length - 1;
    if (found !== 1) bad(`${m.id}: '${m.find}' is ${found} times on line ${m.line}`);
    if (line.replace(m.find, () => m.replace) === line) bad(`${m.id}: nothing changes`);
    if (!MISTAKES.includes(m.kind) || !m.why) bad(`${m.id}: kind ${m.kind}, why '${m.why}'`);
  }
  const real = claims.filter((c) => c.kind !== 'distractor').length;
  console.log(`${trial.padEnd(20)} ${readings.size} readings, ${real} claims, ${claims.length - real} distractors, ${mistakes.length} mistakes: ${problems.length ? `${problems.length} problems` : 'all right'}`);
  for (const p of problems) console.log(`   ${p}`);
  return problems.length;
}
if (import.meta.url === pathToFileURL(process.argv[1]).href) process.exitCode = process.argv.slice(2).map((f) => check(resolve(f))).some(Boolean) ? 1 : 0;
