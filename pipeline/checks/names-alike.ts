// Two names that are likely one, or one name for two things.
import { distance } from '../places/index.js';
import type { Named } from '../records/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';

export const namesAlike: Check = {
  name: 'names-alike',
  says: 'Two ids or names of one kind differ by a letter, a capital or a dash only, or two things are spoken alike.',
  why: 'A mistyped id in a table makes a second thing of one, with half of the readings each; two things spoken alike cannot be told apart in a script.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {card-a: {name: Card A}, card-b: {name: Card B}}
    settings: {limit-80: {name: Power limit 80 %}, limit-90: {name: Power limit 90 %}}
    readings:
      - {for: {setup: [card-a, card-b], setting: [limit-80, limit-90]}, power/board: {load: 200 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups:
      open-bench: {name: Open bench}
      open_bench: {name: Bench} # expect
    settings:
      undervolt: {name: Undervolt, spoken: [the quiet one]}
      undervlot: {name: Lower voltage} # expect
      fan-curve: {name: Fan curve, spoken: [the quiet one]} # expect
    readings:
      - {for: {setup: [open-bench, open_bench], setting: [undervolt, undervlot, fan-curve]}, power/board: {load: 200 W}}
  `) },
  run: ({ episode }) => (['setups', 'settings', 'workloads', 'measures', 'parts', 'phases'] as const).flatMap((kind) => pairs(kind, episode)),
};

function pairs(kind: 'setups' | 'settings' | 'workloads' | 'measures' | 'parts' | 'phases', episode: Context['episode']): Report[] {
  const all: Named[] = [...episode[kind].values()];
  return all.flatMap((b, j) => all.slice(0, j).flatMap((a) => {
    const said = a.spoken.find((s) => b.spoken.some((t) => t.toLowerCase() === s.toLowerCase()));
    const why = alike(a.id, b.id) ? `"${b.id}" and "${a.id}" are nearly the same id`
      : said !== undefined ? `${told(b)} and ${told(a)} are both spoken "${said}"`
      : alike(a.name, b.name) ? `${told(b, '"')} and ${told(a, '"')} are nearly the same name` : undefined;
    return why ? [{ place: b.place, subject: b.id, said: b.id, recorded: a.id, message: `${kind}: ${why}`, related: [{ place: a.place, label: a.name }] }] : [];
  }));
}

/** The name with its id, as two that are alike may have one name. */
function told({ id, name }: Named, quote = ''): string {
  return name === id ? `${quote}${name}${quote}` : `${quote}${name}${quote} (${id})`;
}

/** Digits and single letters tell things apart on purpose (limit-80 and limit-90, card A and card B). */
function alike(a: string, b: string): boolean {
  const x = tokens(a);
  const y = tokens(b);
  if (x.join('') === y.join('')) return true;
  if (x.length !== y.length) return false;
  const differing = x.map((t, i) => [t, y[i]!] as const).filter(([s, t]) => s !== t);
  return differing.length === 1 && differing.every(([s, t]) => !/\d/.test(s + t) && Math.min(s.length, t.length) >= 5 && distance(s, t, 2) === 1);
}

function tokens(text: string): string[] {
  return text.toLowerCase().split(/[^\p{L}\p{N}]+/u).filter(Boolean);
}
