// Names at the left edge of rows: two lines where the rows are high enough, else one line in a wider column.
import { lineHeight, type Misfit, type Stage, wrap } from '../theme/index.js';

export function wrapName({ type }: Stage, name: string, width: number, pitch: number): { lines: string[] } | { misfit: Misfit } {
  // Two lines and the air that keeps them from the next row.
  const twoLines = 2 * type.name.size * lineHeight + 2;
  return pitch >= twoLines ? wrap(name, type.name, width * 0.36, 2) : wrap(name, type.name, width * 0.46, 1);
}
