// One setting, two values.
import { convert, Exact, readQuantity, show, unit } from '../quantities/index.js';
import { type Reading, splitKey, type Setting } from '../records/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped } from './measured.js';
import { readingPlaces, tell } from './words.js';

export const settingTwice: Check = {
  name: 'setting-twice',
  says: 'A limit, target or other constant stands with two values in two places, or a setting is named after another value than it has.',
  why: 'A setting called "Power limit 75 %" whose limit is 240 W of 300 W is 80 %: one of the two was changed later, and viewers hear both.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    settings:
      stock: {name: Stock, kind: stock, limit: {power/board: 300 W}}
      low: {name: Power limit 75 %, kind: power-limit, limit: {power/board: 225 W}}
      uv: {name: Undervolt 0.90 V, kind: undervolt, target: {voltage/core: 0.900 V}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: low, workload: scene}, power/board: {load: 224 224 224 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    settings:
      stock: {name: Stock, kind: stock, limit: {power/board: 300 W}}
      low: {name: Power limit 75 %, kind: power-limit, limit: {power/board: 240 W}} # expect
      uv: {name: Undervolt 0.90 V, kind: undervolt, target: {voltage/core: 0.925 V}} # expect
    workloads: {scene: {name: Test scene}}
    constants:
      - {for: {setup: bench, setting: uv}, voltage/core/target: 0.900 V} # expect
    readings:
      - {for: {setup: bench, setting: low, workload: scene}, power/board: {load: 239 239 239 W}}
  `) },
  run: (context) => [...constantsTwice(context), ...namesOtherwise(context)],
};

function constantsTwice({ episode, facts }: Context): Report[] {
  const constants = episode.readings.filter((r) => r.constant && splitKey(r.key)!.measure !== 'price');
  const at = (r: Reading) => splitKey(r.key)!;
  const ofOne = grouped(constants, (r) => (at(r).setting ? `${at(r).setting} ${at(r).measure} ${at(r).part} ${at(r).phase}` : r.key));
  return [...ofOne.values()].flatMap((all) => {
    const first = all.find((r) => at(r).setup === '') ?? all[0]!;
    const plan = all.length > 1 && first.key !== all[0]!.key;
    const odd = all.find((r) => r !== first && (r.key === first.key || plan || at(first).setup === '') && !sameValue(r, first));
    if (!odd) return [];
    const said = show(odd.quantity.value, odd.quantity.unit, odd.quantity.decimals);
    const other = show(first.quantity.value, first.quantity.unit, first.quantity.decimals);
    return [{
      place: odd.place, subject: odd.key, said, recorded: other,
      message: `${tell(facts.about, odd.key)} is ${said} here and ${other} in another place`, related: readingPlaces([first], () => 'the other place'),
    }];
  });
}

/** The first figure in a setting's name against the constants that the setting brings. */
function namesOtherwise(context: Context): Report[] {
  return [...context.episode.settings.values()].flatMap((setting) => {
    const figure = /(\d+(?:[.,]\d+)?)\s?(%|mV|V|W|MHz|GHz|rpm|°C)(?!\p{L})/u.exec(setting.name);
    const read = figure && readQuantity(`${figure[1]!.replace(',', '.')} ${figure[2]!}`);
    if (!read || 'why' in read) return [];
    const { value, unit: u, decimals } = read.quantity;
    const own = setting.parameters.map((key) => context.facts.readings(key)[0]).filter((r) => r !== undefined);
    const real = own.map((r) => (u.id === '%' && r.quantity.unit.id !== '%' ? ofStock(r, setting, context) : { value: convert(r.quantity.value, r.quantity.unit, u), of: r })).filter((x) => x?.value);
    if (real.length === 0 || real.some((x) => x!.value!.round(decimals).equals(value))) return [];
    const first = real[0]!;
    const is = show(first.value!, u, Math.max(decimals, u.id === '%' ? 0 : first.of.quantity.decimals));
    return [{
      place: setting.place, subject: setting.id, said: show(value, u, decimals), recorded: is,
      message: `the setting is named "${setting.name}" and its ${splitKey(first.of.key)!.phase} is ${is}${u.id === '%' && first.of.quantity.unit.id !== '%' ? ' of stock' : ''}`,
      related: readingPlaces([first.of], () => 'its value'),
    }];
  });
}

function ofStock(own: Reading, setting: Setting, { episode, facts }: Context): { value: Exact | undefined; of: Reading } | undefined {
  const stock = [...episode.settings.values()].find((s) => s.kind === 'stock' && s.id !== setting.id);
  const { measure, part, phase } = splitKey(own.key)!;
  const whole = stock?.parameters.map((k) => facts.readings(k)[0]).find((r) => r && splitKey(r.key)!.measure === measure && splitKey(r.key)!.part === part && splitKey(r.key)!.phase === phase)
    ?? facts.readings(`////${measure}/${part}/${phase}`.slice(1))[0];
  const of = whole && convert(whole.quantity.value, whole.quantity.unit, own.quantity.unit);
  return of && of.sign() > 0 ? { value: own.quantity.value.over(of).over(unit('%').factor), of: own } : undefined;
}

function sameValue(a: Reading, b: Reading): boolean {
  const other = convert(b.quantity.value, b.quantity.unit, a.quantity.unit);
  return other !== undefined && other.equals(a.quantity.value);
}
