// A picture's frames: how far it is built in each, and how long each stands.
import type { Build, Motion } from '../theme/index.js';
import { ease } from './easing.js';
import { type RoleName, roles, wholeBy } from './roles.js';

/** How far each role has come, and how much of the whole is there: all 0 to 1. */
export interface State {
  done: Readonly<Record<RoleName, number>>;
  whole: number;
}

export interface Frame {
  state: State;
  /** For how many frames' time it stands. */
  stands: number;
}

/** More frames than this are no picture that moves but a film: four seconds at 60 a second, or eight at 30. */
export const mostFrames = 240;

/** It comes part by part and goes as one; where it goes, its last frame is empty. */
export function timeline(build: Build, { come, stand, go, easing }: Motion): Frame[] {
  const frames: Frame[] = [];
  if (build !== 'out') for (let i = 1; i <= come; i++) frames.push({ state: stateAt(i / come, easing), stands: 1 });
  else frames.push({ state: stateAt(1, easing), stands: 1 });
  if (build === 'in') return frames;
  if (build === 'in-out') frames.at(-1)!.stands += stand;
  for (let i = 1; i <= go; i++) frames.push({ state: { ...stateAt(1, easing), whole: exact(1 - ease(easing, i / go)) }, stands: 1 });
  return frames;
}

export function lengthOf(build: Build, { come, stand, go }: Motion): number {
  return { in: come, out: 1 + go, 'in-out': come + stand + go }[build];
}

/** `share` of the build from 0 to 1. */
function stateAt(share: number, easing: Motion['easing']): State {
  const done = Object.fromEntries(Object.entries(roles).map(([name, { from, to }]) => [name, to === 0 ? 1 : exact(ease(easing, (share - from) / (to - from)))]));
  return { done: done as State['done'], whole: exact(ease(easing, share / wholeBy)) };
}

/** Few enough digits that every machine writes the same. */
function exact(n: number): number {
  return Math.round(n * 10_000) / 10_000;
}
