// A mark that the record has put down for one setting alone holds in the others too, where they have none: what a heater may draw
// is printed on it, whether it was noted with its low or its high setting.
import type { Cell, Grid } from './grid.js';
import { usualOf } from './usual-setting.js';

/** Of several settings with a mark, that of the usual one. */
export function setElsewhere(g: Grid, cell: Cell, marks: readonly Cell[]): Cell | undefined {
  const fits = (mark: Cell): boolean => mark.at.every((v, i) => {
    const { field } = g.slots[i]!;
    return field === 'phase' || field === 'setting' || v === cell.at[i] || (field === 'workload' && (v === '' || cell.at[i] === ''));
  });
  const own = marks.filter((x) => !cell.fixed && fits(x));
  const slot = g.of.setting[0];
  return own.length < 2 || slot === undefined ? own[0] : own.find((x) => x.at[slot] === usualOf(own.map((y) => y.at[slot]!)));
}
