// What flows in a loop, and which readings tell the heat that it carries.
import { Exact, readQuantity, unit } from '../quantities/index.js';
import type { Context } from './context.js';
import type { Coolant } from './episode.js';
import { measurePath } from './plain-shapes.js';
import { byKind, fields, type Read, turned, type Written, written } from './shape.js';

const path = (says: string) => written('measure/part', says, measurePath(2), { type: 'string' });
export const fluid = written('a coolant (ethylene glycol 30 %)', 'water, ethylene glycol 30 % or propylene glycol 40 %; the share is by volume, up to 60 %.', undefined, { type: 'string' });

type Paths = { flow?: Written; warm?: Written; cold?: Written; power?: Written };
type Draft = { fluid: Written | undefined; paths: Paths };

export const coolant = byKind<Draft>({
  scalar: turned(fluid, (w) => ({ fluid: w, paths: {} })),
  map: turned(fields({
    fluid, flow: path('Its flow: flow/loop'), warm: path('Its temperature behind the source of heat: temperature/coolant-out'), cold: path('Its temperature before the source of heat: temperature/coolant-in'),
    power: path('The electrical power that heats it: power/heater'),
  }, { expects: 'a map of fluid, flow, warm, cold, power', required: ['fluid'] }), ({ fields: { fluid: f, ...paths } }) => ({ fluid: f, paths: paths as Paths })),
}, 'a coolant (ethylene glycol 30 %)', 'What flows in the loop; with flow, warm and cold the heat that it carries is computed, and with power it is held against what went in: {fluid: water, flow: flow/loop, warm: temperature/coolant-out, cold: temperature/coolant-in, power: power/heater}');

export function readCoolant(ctx: Context, draft: Read<typeof coolant> | undefined): Coolant | undefined {
  const read = draft?.fluid && readFluid(ctx, draft.fluid);
  if (!draft || !read) return undefined;
  const paths = Object.entries(draft.paths).flatMap(([role, w]) => {
    const [measure = '', part = ''] = w.text.split('/');
    return ctx.names.use('measure', measure, w.place) && ctx.names.use('part', part, w.place) ? [[role, w.text.includes('/') ? w.text : `${w.text}/`]] : [];
  });
  return { ...read, ...(Object.fromEntries(paths) as Pick<Coolant, 'flow' | 'warm' | 'cold' | 'power'>) };
}

const most = Exact.of(60);

export function readFluid({ reader }: Context, w: Written): Pick<Coolant, 'fluid' | 'share' | 'place'> | undefined {
  const m = /^(water|(?:ethylene|propylene) glycol)(?:,?\s+(\S.*?))?(?:\s+by volume)?$/.exec(w.text.trim().toLowerCase());
  const said = m?.[2] === undefined ? undefined : readQuantity(m[2], unit('%'));
  const share = said && 'quantity' in said && said.quantity.unit.id === '%' ? said.quantity.value : undefined;
  const pure = m?.[1] === 'water' && said === undefined;
  if (m && pure) return { fluid: 'water', share: Exact.zero, place: w.place };
  if (m && m[1] !== 'water' && share && share.sign() > 0 && share.compare(most) <= 0) return { fluid: m[1] as Coolant['fluid'], share, place: w.place };
  const why = m && m[1] !== 'water' ? (share ? 'there are values up to 60 % by volume' : 'say how much of it is glycol, in percent by volume') : 'write water, ethylene glycol 30 % or propylene glycol 40 %';
  reader.fail(w.place, 'coolant-form', `"${w.text}" is no coolant of which the properties are known; ${why}`, { said: w.text });
  return undefined;
}
