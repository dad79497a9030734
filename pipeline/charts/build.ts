// When the layers of a chart come, where the picture moves: said by the layer (`build`), else by what it is.
import type { Spec } from './spec.js';

/** On a layer of a spec, taken off before it is drawn: a role of motion, and for bars the zero line in pixels of the plot (`x 0`), for a line from where to where it is uncovered (`0 900`). */
export interface LayerBuild {
  role: string;
  zero?: string;
  span?: string;
}

/** The spec as it is drawn, and what each of its layers says, by the name that its group bears. */
export function takeBuilds(spec: Spec): { spec: Spec; builds: Map<string, LayerBuild>; growing: boolean } {
  const builds = new Map<string, LayerBuild>();
  const layers = (spec.layer as Spec[] | undefined)?.map((layer, i) => {
    const { build, ...rest } = layer;
    if (build) builds.set(String(layer.name ?? `layer_${i}`), build as LayerBuild);
    return rest;
  });
  return { spec: layers ? { ...spec, layer: layers } : spec, builds, growing: [...builds.values()].some((b) => b.role === 'bars') };
}

/** Marks on the groups of a drawn chart. While lengths grow there is no scale to read them by; points and lines stand on theirs from the first. */
export function markBuilds(svg: string, builds: ReadonlyMap<string, LayerBuild>, growing: boolean): string {
  return svg.replace(/<g class="mark-(\w+) role-mark (\w+?)_(?:marks|pathgroup)"/g, (group, mark: string, name: string) => {
    const own = builds.get(name) ?? (mark === 'rule' ? { role: growing ? 'scale' : 'words' } : undefined);
    return own ? `${group} data-build="${own.role}"${own.zero ? ` data-zero="${own.zero}"` : ''}${own.span ? ` data-span="${own.span}"` : ''}` : group;
  });
}

/** The zero line of a level scale, in pixels of the plot. */
export function zeroOf(least: number, greatest: number, width: number): string {
  return `x ${Math.round(((0 - least) / (greatest - least)) * Math.round(width) * 100) / 100}`;
}
