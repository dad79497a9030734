// Which words of a sentence stand inside names of the record, laid out once for all its mentions.
import type { Name } from './lexicon.js';

export interface Cover {
  /** By token: inside a name of the record. */
  own: readonly boolean[];
  /** By token: inside the name of a part or a measure. */
  measured: readonly boolean[];
}

export function coverOf(names: readonly Name[], length: number): Cover {
  const own = new Array<boolean>(length).fill(false);
  const measured = new Array<boolean>(length).fill(false);
  for (const n of names) {
    if (!n.meanings.some((x) => x.own)) continue;
    const quantity = n.meanings.some((x) => x.own && x.fields.some((f) => f === 'part' || f === 'measure'));
    for (let k = n.from; k < n.to; k++) {
      own[k] = true;
      if (quantity) measured[k] = true;
    }
  }
  return { own, measured };
}
