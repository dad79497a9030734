import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { median, project } from './measure.mjs';

export const says = 'a script against 5,000 readings: proof against parsing the same bytes as Markdown, growth with its length, and again after one line is edited';

const load = (path) => import(pathToFileURL(join(project, 'dist', path)).href);
const setups = Array.from({ length: 20 }, (_, i) => `${'abcdefghijklmnopqrst'[i]}${['rin', 'vel', 'dom', 'kast', 'lun'][i % 5]}${['or', 'an', 'ek', 'ux'][i >> 2 & 3]}`);
const settings = ['stock', 'quiet', 'undervolt', 'overclock', 'limit', 'silent', 'boost', 'travel', 'desk', 'open'];
const workloads = ['harbour', 'forest', 'castle', 'desert', 'island'];
const measures = [['temperature', 'core', 'degC', 'degrees', 60], ['power', 'board', 'W', 'watts', 240], ['frequency', 'core', 'MHz', 'megahertz', 2400], ['noise', 'fan', 'dB(A)', 'decibels', 36], ['frame_rate', 'average', 'fps', 'frames per second', 110]];

/** A series of pseudo-random whole numbers below `n`, the same each time. */
function series(seed) {
  let state = seed;
  return (n) => { state = (state * 1103515245 + 12345) & 0x7fffffff; return (state >> 8) % n; };
}

const value = (i, j, k, m) => measures[m][4] + ((i * 7 + j * 11 + k * 5) % 40);

/** Sentences that are true of the record, in several forms, a heading every twenty. */
function script(words, seed) {
  const next = series(seed);
  const lines = [];
  for (let count = 0; count < words;) {
    if (lines.length % 20 === 0) lines.push('', `## The ${setups[next(20)]}, part ${next(9) + 1}`, '');
    const [i, j, k, m] = [next(20), next(10), next(5), next(5)];
    const [measure, part, , unit] = measures[m];
    const name = `${part === 'average' ? 'average' : `${part}`} ${measure.replace('_', ' ')}`;
    const v = value(i, j, k, m);
    const line = [
      `On the ${setups[i]} at ${settings[j]} in the ${workloads[k]} scene, the ${name} is ${v} ${unit}.`,
      `With the ${setups[i]}, ${settings[j]} setting, ${workloads[k]} scene, after a long warm-up and a short break, we measured ${v} ${unit} of ${name}.`,
      `Now for something without a number in it, because people need to breathe between two figures.`,
      `Then the ${setups[i]} goes to ${settings[j]} in the ${workloads[k]} scene, and its ${name} comes out at ${v} ${unit}.`,
    ][next(4)];
    lines.push(line);
    count += line.split(' ').length;
  }
  return `${lines.join('\n')}\n`;
}

export async function run() {
  const [{ proof }, { Facts }, { Source }, { bareEpisode, readNames, readReadings }] = await Promise.all([load('claims/index.js'), load('facts/index.js'), load('places/index.js'), load('records/index.js')]);
  const rows = ['setup,setting,workload,measure,part,phase,run,value,unit'];
  setups.forEach((s, i) => settings.forEach((t, j) => workloads.forEach((w, k) => measures.forEach(([name, part, unit], m) => rows.push(`${s},${t},${w},${name},${part},load,1,${value(i, j, k, m)},${unit}`)))));
  const names = ['kind,id,spoken', ...setups.map((s) => `setup,${s},the ${s};${s}`), ...settings.map((s) => `setting,${s},${s};at ${s}`), ...workloads.map((w) => `workload,${w},the ${w} scene;${w}`), ...measures.map(([m]) => `measure,${m},${m.replace('_', ' ')}`), 'part,core,core', 'part,board,board', 'part,fan,fan', 'part,average,average', 'phase,load,under load'];
  const table = new Source('readings.csv', `${rows.join('\n')}\n`);
  const facts = new Facts(bareEpisode(readReadings(table).value, readNames(new Source('names.csv', `${names.join('\n')}\n`)).value, table.place(0)));
  // Processor time, not time on the clock: the two differ in length, and a longer one is interrupted more often on a busy machine.
  const took = (work) => { const from = process.cpuUsage(); work(); const { user, system } = process.cpuUsage(from); return (user + system) / 1000; };
  const proofed = (text) => took(() => proof(new Source('script.md', text), facts));
  const parsed = (text) => took(() => fromMarkdown(text));

  // Every text is another one, so that nothing kept from an earlier text helps; what is warm is the program.
  let seed = 1;
  const fresh = (words) => script(words, seed++);
  // So many, as the proof is a large program: after 40 it still takes a quarter more than after 120, and the compiler's own threads are counted too.
  for (let i = 0; i < 120; i++) { const text = fresh(10_000); proofed(text); parsed(text); }
  const ratios = [];
  const times = [[], []];
  for (let i = 0; i < 41; i++) {
    const text = fresh(10_000);
    const [a, b] = i % 2 ? [proofed(text), parsed(text)] : [parsed(text), proofed(text)].reverse();
    ratios.push(a / b);
    times[0].push(a);
    times[1].push(b);
  }
  const rowsOut = [{ what: '10,000 words, proof ÷ Markdown parse', ratio: median(ratios), most: 4, detail: `${median(times[0]).toFixed(0)} ms against ${median(times[1]).toFixed(0)} ms; least ${Math.min(...times[0]).toFixed(0)} against ${Math.min(...times[1]).toFixed(0)}` }];
  const perWord = new Map([1000, 2000, 4000, 8000].map((words) => [words, median(Array.from({ length: 11 }, () => proofed(fresh(words)) / words))]));
  for (const [words, each] of perWord) rowsOut.push({ what: `${words} words, time a word ÷ that of 1000`, ratio: each / perWord.get(1000), ...(words === 8000 && { most: 1.5 }), detail: `${(each * 1000).toFixed(1)} µs a word` });

  // One line after the other is changed, as someone does who works on the script; the lines changed before stay changed.
  const edits = {
    'a word of one line is changed': (line) => line.replace(/\.$/, ', as it happens.'),
    'one line gains a number of which nothing is said': (line, i) => `${line} That is ${(i % 9) + 3} more than one would think.`,
  };
  for (const [what, edit] of Object.entries(edits)) {
    const lines = fresh(10_000).split('\n');
    const spoken = lines.flatMap((line, i) => (line && !line.startsWith('#') ? [i] : []));
    const whole = [];
    for (let i = 0; i < 5; i++) whole.push(proofed(fresh(10_000)));
    proofed(lines.join('\n'));
    const again = Array.from({ length: 60 }, (_, i) => {
      const at = spoken[(i * 37) % spoken.length];
      lines[at] = edit(lines[at], i);
      return proofed(lines.join('\n'));
    }).slice(20);
    rowsOut.push({ what: `again after ${what}`, ratio: median(again) / median(whole), ...(what.startsWith('a word') && { most: 0.2 }), detail: `${median(again).toFixed(1)} ms against ${median(whole).toFixed(0)} ms; least ${Math.min(...again).toFixed(1)}` });
  }
  rowsOut.push(asPeopleWrite());
  return rowsOut;

  /** The scripts of the trial episodes, each against a record that was never asked before: comparisons, ellipsis, several numbers a sentence. */
  function asPeopleWrite() {
    const trials = join(project, 'test/trials');
    const all = readdirSync(trials).filter((name) => existsSync(join(trials, name, 'script.md'))).map((name) => ['readings.csv', 'names.csv', 'script.md'].map((file) => readFileSync(join(trials, name, file), 'utf8')));
    const words = all.reduce((sum, [, , text]) => sum + text.split(/\s+/).length, 0);
    const once = () => all.reduce(([a, b], [table, called, text]) => {
      const own = new Source('readings.csv', table);
      const record = new Facts(bareEpisode(readReadings(own).value, readNames(new Source('names.csv', called)).value, own.place(0)));
      return [a + took(() => proof(new Source('script.md', text), record)), b + parsed(text)];
    }, [0, 0]);
    const times = Array.from({ length: 3 }, once);
    const [a, b] = [0, 1].map((i) => median(times.map((t) => t[i])));
    return { what: 'scripts as people write them, first proof ÷ Markdown parse', ratio: a / b, detail: `${((a * 1000) / words).toFixed(0)} µs a word, ${(a / all.length).toFixed(0)} ms a script of ${Math.round(words / all.length)} words` };
  }
}
