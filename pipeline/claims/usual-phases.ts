// The phases of a record by their role, and those that a figure is about where none is named.
import type { Grid } from './grid.js';
import type { Role } from './roles.js';

const phases = new WeakMap<Grid, Map<Role, readonly string[]>>();

/** The phases of the record that play a role. */
export function phasesOf(g: Grid, role: Role): readonly string[] {
  let byRole = phases.get(g);
  if (!byRole) phases.set(g, (byRole = new Map()));
  let found = byRole.get(role);
  if (!found) byRole.set(role, (found = [...g.values[g.of.phase[0]!]!.keys()].filter((v) => g.roles.get(v) === role)));
  return found;
}

const usualOf = new WeakMap<Grid, ReadonlySet<string>>();
/** The phases that a figure is about where none is named: under load, or the end of a long run; and any that has no other beside it. */
export function defaultPhases(g: Grid): ReadonlySet<string> {
  const known = usualOf.get(g);
  if (known) return known;
  const phases = [...g.values[g.of.phase[0]!]!.keys()];
  const has = (role: Role): boolean => phases.some((v) => g.roles.get(v) === role);
  const usual = new Set(phases.filter((v) => { const r = g.roles.get(v); return r === 'load' || (r === 'end' && (has('start') || !has('load'))); }));
  usualOf.set(g, usual);
  return usual;
}
