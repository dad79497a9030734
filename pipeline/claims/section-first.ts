// What a section is about comes before what was named in it by the way.
import type { State } from './state.js';

/** Puts the section's own value first: of things named side by side, and of settings, where another was named by the way ("On slow it was 41") and none in the sentence since, which is no part of what the section is about. */
export function sectionFirst(topics: string[], section: string | undefined, state: State, slot: number, setting: boolean): void {
  const lead = section === undefined ? 0 : topics.indexOf(section);
  if (lead > 0 && (lead < state.together[slot]! || (setting && state.ages[slot]! >= 1 && !state.heading.some(([k, v]) => k === slot && v === topics[0])))) topics.unshift(...topics.splice(lead, 1));
}
