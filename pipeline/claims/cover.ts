// Which words of a sentence stand inside names of the record, laid out once for all its mentions.
import type { Name } from './lexicon.js';

export interface Cover {
  /** By token: 1 inside a name of the record. */
  own: Uint8Array;
  /** By token: 1 inside the name of a part or a measure. */
  measured: Uint8Array;
}

export function coverOf(names: readonly Name[], length: number): Cover {
  const own = new Uint8Array(length);
  const measured = new Uint8Array(length);
  for (const n of names) {
    if (!n.meanings.some((x) => x.own)) continue;
    const quantity = n.meanings.some((x) => x.own && x.fields.some((f) => f === 'part' || f === 'measure'));
    for (let k = n.from; k < n.to; k++) {
      own[k] = 1;
      if (quantity) measured[k] = 1;
    }
  }
  return { own, measured };
}
