// What comes when. No frame may show what is not so: lengths grow by one factor, figures and scales appear when lengths are final,
// and nothing is staggered row by row, so that every frame has the final order.

export interface Role {
  /** Comes with the whole, fades at its place, grows from its zero line, or is uncovered from the left. */
  how: 'stand' | 'fade' | 'grow' | 'uncover';
  /** Begin and end, as shares of the whole build. */
  from: number;
  to: number;
}

/** In this share of the build the whole, with what stands in it from the first, fades in. */
export const wholeBy = 0.25;

export const roles = {
  panel: { how: 'stand', from: 0, to: 0 },
  words: { how: 'stand', from: 0, to: 0 },
  marks: { how: 'fade', from: 0.3, to: 0.6 },
  first: { how: 'fade', from: 0.25, to: 0.45 },
  second: { how: 'fade', from: 0.45, to: 0.65 },
  third: { how: 'fade', from: 0.65, to: 0.85 },
  bars: { how: 'grow', from: 0.3, to: 0.8 },
  line: { how: 'uncover', from: 0.3, to: 0.85 },
  scale: { how: 'fade', from: 0.8, to: 1 },
  figures: { how: 'fade', from: 0.8, to: 1 },
} as const satisfies Record<string, Role>;

export type RoleName = keyof typeof roles;

export function isRole(name: string | undefined): name is RoleName {
  return name !== undefined && Object.hasOwn(roles, name);
}

/** The role of a thing that bears no mark, by its element's name and whether it is a text with figures of one width. */
export function usualRole(element: string, tabular: boolean): RoleName {
  return element === 'text' ? (tabular ? 'figures' : 'words') : 'marks';
}
