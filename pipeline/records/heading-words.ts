// What a column's heading says of its measure, part and unit; words of the trade, in the languages that logs are met in.
import { findUnit, type Unit, unit, units } from '../quantities/index.js';
import { commonMeasures } from './common-names.js';

export interface HeadingGuess {
  measure?: string;
  part: string;
  unit?: Unit;
}

const measureWords: Record<string, string> = {
  temp: 'temperature', temps: 'temperature', temperature: 'temperature', temperatur: 'temperature',
  power: 'power', watt: 'power', watts: 'power', draw: 'power', leistung: 'power',
  clock: 'frequency', freq: 'frequency', frequency: 'frequency', takt: 'frequency', speed: 'fan_speed',
  voltage: 'voltage', volt: 'voltage', volts: 'voltage', spannung: 'voltage', vcore: 'voltage',
  current: 'current', amps: 'current', strom: 'current',
  noise: 'noise', level: 'noise', sound: 'noise', lautstärke: 'noise',
  fps: 'frame_rate', framerate: 'frame_rate', frametime: 'frame_time', frame: 'frame_time',
  util: 'utilisation', utilisation: 'utilisation', utilization: 'utilisation', usage: 'utilisation', load: 'utilisation', auslastung: 'utilisation',
  flow: 'flow', flowrate: 'flow', durchfluss: 'flow', pressure: 'pressure', energy: 'energy', efficiency: 'efficiency', score: 'score', mass: 'mass', weight: 'mass', price: 'price', duty: 'ratio', pwm: 'ratio', pump: 'pump_speed',
};

const partWords: Record<string, string> = {
  mem: 'memory', vram: 'memory', speicher: 'memory', kern: 'core', karte: 'card', lüfter: 'fan', fans: 'fan', raum: 'room', ambient: 'room', hot: 'hotspot', junction: 'hotspot', wall: 'wall', pump: 'pump', fan: 'fan',
};

/** A measure of each dimension, where the heading has only a unit. */
const byDimension: Partial<Record<Unit['dimension'], string>> = {
  temperature: 'temperature', power: 'power', voltage: 'voltage', current: 'current', frequency: 'frequency', rotation: 'fan_speed', 'frame-rate': 'frame_rate',
  'sound-level': 'noise', flow: 'flow', 'air-flow': 'airflow', pressure: 'pressure', energy: 'energy', mass: 'mass', length: 'length', money: 'price', share: 'ratio', 'data-rate': 'data_rate', duration: 'duration', score: 'score',
};

const silent = new Set(['spot', 'avg', 'average', 'mean', 'value', 'sensor', 'reading', 'total', 'the', 'of', 'in', 'rate']);
const unitWords: Record<string, string> = { c: 'degC', degc: 'degC', f: 'degF', w: 'W', mw: 'mW', v: 'V', mv: 'mV', a: 'A', ma: 'mA', mhz: 'MHz', ghz: 'GHz', rpm: 'rpm', '1/min': 'rpm', 'u/min': 'rpm', pct: '%', percent: '%', '%': '%', ms: 'ms', us: 'us', s: 's', fps: 'fps', db: 'dB(A)', dba: 'dB(A)' };

/** Of a device's own sensors: its power is that of the whole board or package, everything else is its core's. */
const devices: Record<string, string> = { gpu: 'board', cpu: 'package' };

/** Whether the headings speak of two devices, whose parts must then be told apart by it. */
export function severalDevices(headings: readonly string[]): boolean {
  const named = (device: string) => headings.some((h) => new RegExp(`(?<![a-z])${device}(?![a-z])`, 'i').test(h.replace(/([a-z])([A-Z])/g, '$1 $2')));
  return Object.keys(devices).filter(named).length > 1;
}

/** "core_temp_c", "GPU Power [W]", "Lüfter 1/min", "memory temperature (°C)". */
export function readHeading(heading: string, tellDevices = false): HeadingGuess {
  const bracket = /\s\S+\([^()]*\)\s*$/.test(heading) ? undefined : /[([{]([^()[\]{}]+(?:\([^()]*\))?)[)\]}]\s*$/.exec(heading);
  let rest = bracket ? heading.slice(0, bracket.index) : heading;
  let u = bracket ? unitNamed(bracket[1]!.trim()) : undefined;
  if (!u) {
    const cut = /[\s_-]+(\S+)$/.exec(rest.replace(/_/g, ' '));
    const last = cut?.[1];
    const found = last === undefined ? undefined : unitNamed(last);
    if (found && last !== undefined) {
      u = found;
      rest = rest.slice(0, rest.length - last.length);
    }
  }
  const words = rest.replace(/([a-zäöü])([A-Z])/g, '$1 $2').toLowerCase().split(/[^\p{L}\p{N}]+/u).filter(Boolean);
  const said = words.map((w) => measureWords[w]);
  let measure = said.find((m) => m !== undefined);
  if (words.includes('frame') && words.includes('rate')) measure = 'frame_rate';
  if (words.includes('fan') && (u?.dimension === 'rotation' || words.includes('speed'))) measure = 'fan_speed';
  if (words.includes('pump') && u?.dimension === 'rotation') measure = 'pump_speed';
  if (measure === undefined || (u && !fits(measure, u))) measure = (u && byDimension[u.dimension]) ?? measure;
  if (!u && measure === 'frame_rate') u = unit('fps');
  const all = words.filter((w) => (measureWords[w] === undefined || partWords[w] !== undefined) && !silent.has(w) && !(w in unitWords)).map((w) => partWords[w] ?? w).filter((w, i, all) => all.indexOf(w) === i);
  const device = all.find((w) => w in devices);
  const parts = device && !tellDevices ? all.filter((w) => w !== device) : all;
  const part = device && parts.length === 0 && measure ? (measure === 'power' ? devices[device]! : 'core') : parts.join('-');
  return { ...(measure && { measure }), part, ...(u && { unit: u }) };
}

function unitNamed(text: string): Unit | undefined {
  const id = unitWords[text.toLowerCase()];
  if (id) return unit(id);
  const found = /^\d+$/.test(text) || (/^[a-z]{3,}$/i.test(text) && !units.has(text)) ? undefined : findUnit(text);
  return found && found.dimension !== 'count' ? found : undefined;
}

/** Whether values of this measure can be in this unit: fan speeds and duties are both met in percent. */
function fits(measure: string, u: Unit): boolean {
  const usual = commonMeasures.get(measure)?.unit;
  return !usual || findUnit(usual)?.dimension === u.dimension || u.dimension === 'share';
}
