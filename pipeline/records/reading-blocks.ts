// Blocks of readings and of constants: `for` once, then measure/part with its values by phase and run.
import { constantPhases } from './common-names.js';
import { unit } from '../quantities/index.js';
import { type Context, type Readings, usualUnit } from './context.js';
import type { Reading } from './episode.js';
import { type KeyParts, makeKey } from './key.js';
import type { ScopedBlock, Values } from './values-shape.js';
import type { Entry, Written } from './shape.js';
import { runsOf } from './values.js';

/** Stands for the unit of a measure that is not known, so that a missing unit is not told besides. */
const one = unit('1');

type Scope = Partial<Pick<KeyParts, 'setup' | 'setting' | 'workload'>>;

export function readBlocks(ctx: Context, blocks: readonly ScopedBlock[], constant: boolean, readings: Readings): void {
  for (const { path, block } of blocks) {
    const phase = block.fields.phase?.text ?? '';
    const known = !block.fields.phase || ctx.names.use('phase', phase, block.fields.phase.place);
    const scopes = scopesOf(ctx, path, block.fields.for?.fields);
    // A block whose scope is wrong is read all the same, for what else is wrong in it; several scopes tell it once.
    for (const [i, scope] of (scopes.length ? scopes : [{}]).entries()) {
      const { findings } = ctx.reader;
      const told = findings.length;
      const made: Reading[] = [];
      if (block.fields.room && block.keys.room) made.push(...phased(ctx, { key: { text: 'temperature/room', place: block.keys.room }, value: block.fields.room }, scope, '', false));
      for (const entry of block.rest) made.push(...phased(ctx, entry, scope, phase, constant));
      if (i > 0) findings.length = told;
      if (known && scopes.length) for (const r of made) readings.add(r);
    }
  }
}

/** Every combination of the setups, settings and workloads that a `for` names; those with an unknown name are left out. */
function scopesOf(ctx: Context, path: Written | undefined, given: Partial<Record<keyof Scope, Written[]>> | undefined): Scope[] {
  if (path) {
    const [setup = '', setting = '', workload = ''] = path.text.split('/');
    const known = ctx.names.use('setup', setup, path.place) && ctx.names.use('setting', setting, path.place) && ctx.names.use('workload', workload, path.place);
    return known ? [{ setup, setting, workload }] : [];
  }
  let scopes: Scope[] = [{}];
  for (const kind of ['setup', 'setting', 'workload'] as const) {
    const ids = given?.[kind];
    if (!ids) continue;
    const known = ids.filter((w) => ctx.names.use(kind, w.text, w.place));
    scopes = scopes.flatMap((s) => known.map((w) => ({ ...s, [kind]: w.text })));
  }
  return scopes;
}

/**
 * The readings of one entry `measure/part[/phase]: values`. Readings at idle belong to a setup and a setting, not to the
 * workload that the block is about. Limits, targets and the like are constants wherever they stand.
 */
export function phased(ctx: Context, { key, value }: Entry<Values>, scope: Scope, phase: string, constant: boolean): Reading[] {
  const [measure, part = '', own] = key.text.split('/') as [string, string?, string?];
  const known = [ctx.names.use('measure', measure, key.place), ctx.names.use('part', part, key.place), own === undefined || ctx.names.use('phase', own, key.place)].every(Boolean);
  const usual = known ? usualUnit(ctx, measure) : one;
  const out: Reading[] = [];
  const give = (values: Values, at: string) => {
    const fixed = constant || (constantPhases as readonly string[]).includes(at);
    const runs = runsOf(values, ctx.reader, usual);
    if (fixed && runs.length > 1) {
      ctx.reader.fail(runs[1]!.place, 'record-form', `a constant has one value, found ${runs.length}`, { subject: makeKey({ ...scope, measure, part, phase: at }) });
      return;
    }
    const workload = at === 'idle' && phase !== 'idle' && own !== 'idle' ? '' : scope.workload;
    for (const r of runs) {
      // A room temperature written once holds for all runs; any other value written once is the one run there was.
      const held = fixed || (r.run === '' && part === 'room');
      out.push({ key: makeKey({ ...scope, workload, measure, part, phase: at }), run: held ? '' : r.run || '1', quantity: r.quantity, constant: held, place: r.place });
    }
  };
  if (!('by' in value)) {
    give(value, own ?? phase);
    return known ? out : [];
  }
  const byRun = value.by.filter((e) => /^\d+$/.test(e.key.text));
  if (byRun.length) give({ by: byRun }, own ?? phase);
  for (const e of value.by) {
    if (/^\d+$/.test(e.key.text)) continue;
    if (own !== undefined || (phase && constant)) ctx.reader.fail(e.key.place, 'record-form', `the phase is ${own ?? phase} already; "${e.key.text}" cannot be another`, { said: e.key.text });
    else if (ctx.names.use('phase', e.key.text, e.key.place)) give(e.value, e.key.text);
  }
  return known ? out : [];
}
