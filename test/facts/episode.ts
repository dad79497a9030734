// Small episodes for tests: one line a key, `setup/setting/workload/measure/part/phase: 61 62 62 °C` (runs) or `= 250 W` (a constant).
import { Source } from '../../pipeline/places/index.js';
import { readQuantity } from '../../pipeline/quantities/index.js';
import { bareEpisode, type Episode, type Reading } from '../../pipeline/records/index.js';
import { Facts } from '../../pipeline/facts/index.js';

export function episodeOf(text: string, change: Partial<Episode> = {}): Episode {
  const source = new Source('data/example/episode.yaml', text);
  const readings: Reading[] = [];
  for (const [i, line] of text.trim().split('\n').entries()) {
    const m = /^\s*([^:]+): (=?)\s*(.*?)\s*([^\d\s.]\S*)?$/.exec(line);
    if (!m) throw new Error(`not a line of readings: ${line}`);
    const values = m[3]!.split(/\s+/);
    for (const [n, v] of values.entries()) {
      const q = readQuantity(`${v} ${m[4] ?? '1'}`);
      if ('why' in q) throw new Error(q.why);
      readings.push({ key: m[1]!, run: m[2] ? '' : String(n + 1), quantity: q.quantity, constant: m[2] === '=', place: source.wholeLine(i + 1) });
    }
  }
  return { ...bareEpisode(readings, [], source.wholeLine(1)), id: 'example', title: 'Example', ...change };
}

export function factsOf(text: string, change: Partial<Episode> = {}): Facts {
  return new Facts(episodeOf(text, change));
}
