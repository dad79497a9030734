// Setups, settings, workloads, measures, parts and phases, with the constants and prices that they bring.
import { commonMeasures, constantPhases } from './common-names.js';
import { readFluid } from './coolant-shape.js';
import { type Context, type Readings, usualUnit } from './context.js';
import type { Measure, Named, Setting, Setup } from './episode.js';
import { makeKey } from './key.js';
import { unit } from '../quantities/index.js';
import { isStock, measureName, shownFromId, spokenByDefault, spokenProduct } from './names.js';
import { phased } from './reading-blocks.js';
import type { Entry, Written } from './shape.js';
import { quantityOf, unitOf } from './values.js';

type Bare = { fields: { name?: Written; spoken?: Written[] } };

function named(kind: 'setup' | 'setting' | 'workload' | 'measure' | 'part' | 'phase', { key, value }: Entry<Bare>): Named {
  const name = value.fields.name?.text ?? (kind === 'measure' ? measureName(key.text) : shownFromId(key.text));
  const spoken = value.fields.spoken?.map((s) => s.text) ?? spokenByDefault(kind, key.text, name);
  return { id: key.text, name, spoken, place: key.place };
}

/** Declares every name of the record; what they bring in values is read by `broughtConstants`, once all names are known. */
export function declareNames(ctx: Context): void {
  const { fields: f, names, reader } = ctx;
  if (f.setups) {
    names.declare('setup', f.setups.map((e): Setup => {
      const v = e.value.fields;
      const price = v.price && quantityOf(v.price, reader);
      if (v.price && price && price.unit.dimension !== 'money') reader.fail(v.price.place, 'value-form', `"${v.price.text}" is not a price; write it with its currency ($499, 449 EUR)`, { said: v.price.text });
      const own = named('setup', e);
      const kind = v.kind?.value ?? (v.price || v.sample ? 'product' : 'arrangement');
      const coolant = v.coolant && readFluid(ctx, v.coolant);
      return {
        ...own, kind, ...(kind === 'product' && !v.spoken && { spoken: spokenProduct(own.name) }),
        ...(coolant && { coolant }), ...(v.sample && { sample: v.sample.text }), ...(v.obtained && { obtained: v.obtained.value }),
        ...(price && { price: { amount: price, place: v.price!.place, ...(v['price date'] && { date: v['price date'].text }) } }),
      };
    }));
  }
  if (f.settings) {
    names.declare('setting', f.settings.map((e): Setting => {
      const v = e.value.fields;
      const kind = v.kind?.value ?? (isStock(e.key.text) ? 'stock' : undefined);
      return { ...named('setting', e), parameters: [], ...(kind && { kind }), ...(v.note && { note: v.note.text }) };
    }));
  }
  if (f.measures) {
    names.declare('measure', f.measures.map((e): Measure => {
      const v = e.value.fields;
      const unit = v.unit && unitOf(v.unit, reader);
      return {
        ...named('measure', e), better: v.better?.value ?? commonMeasures.get(e.key.text)?.better ?? 'neither',
        ...(unit && { unit }), ...(v.definition && { definition: v.definition.text }),
      };
    }));
    for (const e of f.measures) {
      const { matters } = e.value.fields;
      const quantity = matters && quantityOf(matters, reader, usualUnit(ctx, e.key.text));
      // A difference that matters is one: "1 °C" means 1 K.
      const between = quantity?.unit.difference;
      if (quantity) (names.map('measure').get(e.key.text) as Measure).matters = between ? { ...quantity, unit: unit(between) } : quantity;
    }
  }
  if (f.workloads) names.declare('workload', f.workloads.map((e) => named('workload', e)));
  if (f.parts) names.declare('part', f.parts.map((e) => named('part', e)));
  if (f.phases) names.declare('phase', f.phases.map((e) => named('phase', e)));
}

/** Limits, targets … of settings, constants and prices of setups, as readings without a run. */
export function broughtConstants(ctx: Context, readings: Readings): void {
  const { fields: f, names } = ctx;
  for (const e of f.setups ?? []) {
    const setup = names.map('setup').get(e.key.text) as Setup;
    const { price, constants } = e.value.fields;
    if (setup.price && price) readings.add({ key: makeKey({ setup: setup.id, measure: 'price' }), run: '', quantity: setup.price.amount, constant: true, place: price.place });
    if (setup.price) names.use('measure', 'price', setup.price.place);
    for (const entry of constants?.rest ?? []) for (const r of phased(ctx, entry, { setup: setup.id }, '', true)) readings.add(r);
  }
  for (const e of f.settings ?? []) {
    const setting = names.map('setting').get(e.key.text) as Setting;
    for (const phase of constantPhases) {
      for (const entry of e.value.fields[phase]?.rest ?? []) {
        for (const r of phased(ctx, entry, { setting: setting.id }, phase, true)) {
          readings.add(r);
          setting.parameters.push(r.key);
        }
      }
    }
  }
}
