// Labels in a column, each as near to its own height as the others let it be.

/** Heights at least `pitch` apart and inside [low, high], in the order of `wanted`; undefined where they have no room. */
export function spreadLabels(wanted: readonly number[], pitch: number, low: number, high: number): number[] | undefined {
  if ((wanted.length - 1) * pitch > high - low + 0.5) return undefined;
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  // Neighbours that would touch become one block, as long as blocks touch; a block stands where its members are best served on average.
  let blocks = order.map((i) => ({ members: [i], middle: wanted[i]! }));
  const span = (n: number): number => ((n - 1) * pitch) / 2;
  const held = (middle: number, n: number): number => Math.min(high - span(n), Math.max(low + span(n), middle));
  for (let touching = true; touching;) {
    touching = false;
    const next: typeof blocks = [];
    for (const block of blocks) {
      const before = next.at(-1);
      const own = held(block.middle, block.members.length);
      if (before && own - span(block.members.length) - (held(before.middle, before.members.length) + span(before.members.length)) < pitch - 1e-6) {
        const members = [...before.members, ...block.members];
        next[next.length - 1] = { members, middle: members.reduce((sum, m) => sum + wanted[m]!, 0) / members.length };
        touching = true;
      } else next.push(block);
    }
    blocks = next;
  }
  const placed: number[] = [];
  for (const { members, middle } of blocks) members.forEach((m, i) => (placed[m] = held(middle, members.length) - span(members.length) + i * pitch));
  return placed;
}
