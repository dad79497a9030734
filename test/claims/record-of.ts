// Small invented records for tests, as rows of readings.
import { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readNames, readReadings } from '../../pipeline/records/index.js';

export type Row = [setup: string, setting: string, workload: string, measure: string, part: string, phase: string, value: number, unit: string, spread?: number];

/** Three runs around the value where a spread is given, else one reading. */
export function factsOf(rows: readonly Row[], names: string): Facts {
  const lines = rows.flatMap(([a, b, w, m, p, ph, v, u, d]) => (d === undefined ? [[a, b, w, m, p, ph, '', v, u].join(',')] : [v - d, v, v + d].map((x, i) => [a, b, w, m, p, ph, i + 1, Number(x.toFixed(3)), u].join(','))));
  const readings = new Source('readings.csv', ['setup,setting,workload,measure,part,phase,run,value,unit', ...lines].join('\n'));
  return new Facts(bareEpisode(readReadings(readings).value!, readNames(new Source('names.csv', names)).value!, readings.place(0)));
}
