// Whether an entry of the record gives a kind of graphic what it takes, and nothing that it would pass over.
import type { FactKind, Facts, PictureRequest } from '../facts/index.js';
import { isFact } from '../facts/index.js';
import type { Composer } from './compose.js';
import type { Graphic } from './graphic.js';

/** True where it can be composed; what is wrong with the request is told through `complain`. */
export function accepts({ kind, takes }: Graphic, request: PictureRequest, facts: Facts, complain: Composer['complain']): boolean {
  const { name } = request;
  let sound = true;
  const refuse = (code: string, message: string, subject?: string): void => {
    sound = false;
    complain(code, `picture "${name}" ${message}`, subject);
  };
  const ids = request.facts ?? [];
  if (takes.facts) {
    const { least, most, kinds } = takes.facts;
    const picked = takes.readings && ids.length === 0;
    if (!picked && ids.length < least) refuse('picture-incomplete', ids.length ? `names ${count(ids.length)}, and a ${kind} takes ${least === most ? least : `at least ${least}`}` : `names no ${least === 1 ? 'fact' : 'facts'}; a ${kind} takes ${amount(least, most)}`);
    if (ids.length > most) refuse('picture-incomplete', `names ${count(ids.length)}, and a ${kind} takes ${amount(least, most)}`);
    for (const id of ids) {
      const fact = facts.get(id);
      if (kinds && isFact(fact ?? { why: '' }) && !kinds.includes((fact as { kind: FactKind }).kind)) refuse('picture-incomplete', `shows ${id}, and a ${kind} is of ${oneOf(kinds)}`, id);
    }
  } else if (ids.length) refuse('picture-incomplete', `names facts, and a ${kind} takes none`);
  const given: [string, boolean, unknown][] = [
    ['text', takes.text !== undefined, request.text], ['setups', !!takes.setups, request.setups], ['settings', !!takes.settings, request.settings],
    ...(['measure', 'part', 'phase', 'workload'] as const).map((f): [string, boolean, unknown] => [f, !!takes.readings, request[f]]),
  ];
  for (const [field, taken, value] of given) if (!taken && value !== undefined) refuse('picture-incomplete', `gives \`${field}\`, which a ${kind} does not show`);
  return sound;
}

function count(n: number): string {
  return n === 1 ? '1 fact' : `${n} facts`;
}

function amount(least: number, most: number): string {
  return least === most ? String(least) : `${least} to ${most}`;
}

function oneOf(kinds: readonly FactKind[]): string {
  const names = kinds.map((k) => k.replaceAll('_', ' '));
  return names.length === 1 ? `a ${names[0]}` : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
