// "rated for 60", "my line is 45": the words for what is allowed, aimed at and promised stand for one another where the record has but one of them.
import type { Grid } from './grid.js';
import type { Role } from './roles.js';

const marks: readonly Role[] = ['limit', 'target', 'rated'];
const known = new WeakMap<Grid, Map<Role, readonly string[]>>();

/** The phases that a word of a mark can mean: those of its role, and another mark's where no measure that has it has one of this role too. */
export function markPhases(g: Grid, role: Role): readonly string[] | undefined {
  if (!marks.includes(role)) return undefined;
  let byRole = known.get(g);
  if (!byRole) known.set(g, (byRole = new Map()));
  let found = byRole.get(role);
  if (!found) byRole.set(role, (found = find(g, role)));
  return found;
}

function find(g: Grid, role: Role): string[] {
  const phase = g.of.phase[0]!;
  const of = (m: string): string[] => [...g.valuesWith.get(m)![phase]!];
  const roleAt = (v: string): Role | undefined => g.roles.get(v);
  return [...g.values[phase]!.keys()].filter((v) => roleAt(v) === role || (marks.includes(roleAt(v)!) && [...g.byMeasure.keys()].every((m) => !of(m).includes(v) || !of(m).some((w) => roleAt(w) === role))));
}
