// Settings that are a full cross of two ("dim-indoors", "blower-low-vents-open"): each of the two is an axis of its own.

/** The two halves of each id; a half is empty where the id is the other one alone ("dim", whatever the light around). */
export type Crossing = ReadonlyMap<string, readonly [string, string]>;

export function crossing(ids: readonly string[]): Crossing | undefined {
  const most = Math.max(0, ...ids.map((id) => id.split('-').length));
  for (let cut = 1; cut < most; cut++) {
    const found = ids.length < 4 ? undefined : cutAfter(ids.map((id) => id.split('-')), cut);
    if (found) return found;
  }
  return undefined;
}

/** All ids cut behind as many words, where that makes a full cross of at least two by two. */
function cutAfter(ids: readonly (readonly string[])[], cut: number): Crossing | undefined {
  const behind = new Set(ids.filter((w) => w.length > cut).map((w) => w.slice(cut).join('-')));
  const whole = ids.filter((w) => w.length > cut && !behind.has(w.join('-')));
  const axes = [new Set(whole.map((w) => w.slice(0, cut).join('-'))), new Set(whole.map((w) => w.slice(cut).join('-')))] as const;
  if (axes.some((a) => a.size < 2) || axes[0].size * axes[1].size !== whole.length) return undefined;
  const out = new Map<string, [string, string]>();
  for (const w of ids) {
    const id = w.join('-');
    if (whole.includes(w)) out.set(id, [w.slice(0, cut).join('-'), w.slice(cut).join('-')]);
    else if (axes[0].has(id) !== axes[1].has(id)) out.set(id, axes[0].has(id) ? [id, ''] : ['', id]);
    else return undefined;
  }
  return out;
}
