// "at the bottom", "in the middle", "at the top" for settings that go from low to high, and "to full" for a stretch that goes there.
import type { Grid } from './grid.js';

const rows: readonly [RegExp, readonly string[]][] = [
  [/^(?:low|lowest|bottom|min|minimum|smallest|gentlest|slowest)$/, ['at bottom', 'at low end', 'at bottom end']],
  [/^(?:middle|mid|medium|centre|center)$/, ['in middle', 'in between']],
  [/^(?:top|high|highest|max|maximum|full|largest|fastest)$/, ['at top', 'at high end', 'at top end']],
];

/** Where one thing alone was tested, a place on the scale is one of its settings. */
export function positions(g: Grid, settings: ReadonlyMap<string, { id: string; spoken: readonly string[] }>): [phrase: string, id: string][] {
  const tested = g.of.setup.length === 1 ? [...g.values[g.of.setup[0]!]!.keys()].filter((v) => !g.holders.has(v)) : [];
  if (g.of.setting.length !== 1 || tested.length > 1) return [];
  const used = new Set([...settings.values()].filter((n) => g.values[g.of.setting[0]!]!.has(n.id)).map((n) => n.id));
  return rows.flatMap(([word, phrases]) => {
    const called = [...used].filter((id) => [id.replace(/[-_]/g, ' '), ...settings.get(id)!.spoken].some((s) => s.toLowerCase().split(' ').some((w) => word.test(w))));
    return called.length === 1 ? phrases.map((p): [string, string] => [p, called[0]!]) : [];
  });
}

/** "empty-to-full": "to full", "from empty to full". */
export function stretches(phase: string): string[] {
  const m = /^(\w+)-to-(\w+)$/.exec(phase);
  return m ? [`to ${m[2]}`, `from ${m[1]} to ${m[2]}`, `${m[1]} to ${m[2]}`, ...(/^\d+$/.test(m[2]!) ? [`to ${m[2]} percent`] : [])] : [];
}
