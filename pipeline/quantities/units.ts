// The units of the trade as data: symbol, spoken forms, dimension, and an exact factor to the dimension's base unit.
// Factors: NIST SP 811 App. B.8 (inch, foot, gallon, psi), exact by definition elsewhere. A temperature and a
// temperature difference are two dimensions, because 10 °C as a temperature is 50 °F and as a difference is 18 °F.
import { Exact } from './exact.js';

export type Dimension =
  | 'temperature' | 'temperature-difference' | 'power' | 'voltage' | 'current' | 'resistance' | 'frequency' | 'rotation'
  | 'frame-rate' | 'sound-level' | 'energy' | 'charge' | 'duration' | 'share' | 'points' | 'mass' | 'length' | 'volume'
  | 'flow' | 'air-flow' | 'pressure' | 'data' | 'data-rate' | 'illuminance' | 'apparent-power' | 'loudness' | 'force' | 'torque'
  | 'conductivity' | 'operations' | 'speed' | 'luminous-flux' | 'signal-level' | 'throughput' | 'money' | 'count' | 'score' | 'compound';

export interface Unit {
  /** How records and tables write it, ASCII where it can be: `degC`, `dB(A)`, `L/min`. */
  id: string;
  dimension: Dimension;
  /** How pictures and pages show it. */
  symbol: string;
  /** Said of one, said of any other number. */
  one: string;
  many: string;
  /** Other spellings that people write, matched exactly first and then without regard to case. */
  also: readonly string[];
  /** Value in base unit = value × factor + offset. */
  factor: Exact;
  offset: Exact;
  /** The unit of a difference of two values in this unit, where that is another one. */
  difference?: string;
  /** Of a compound ("fps/W"): what is counted, and for each what. */
  parts?: readonly [top: Unit, bottom: Unit];
}

type Row = [id: string, dimension: Dimension, symbol: string, one: string, many: string, factor: string, also?: string, extra?: { offset?: string; difference?: string }];

const rows: Row[] = [
  ['degC', 'temperature', '°C', 'degree Celsius', 'degrees Celsius', '1', '°C|ºC|℃|C|deg C|degree|degrees|deg|°|degrees C|celsius|degree celsius|degrees celsius', { difference: 'K' }],
  ['degF', 'temperature', '°F', 'degree Fahrenheit', 'degrees Fahrenheit', '5/9', '°F|ºF|℉|F|deg F|degrees F|fahrenheit|degree fahrenheit|degrees fahrenheit', { offset: '-160/9', difference: 'delta-degF' }],
  ['K', 'temperature-difference', 'K', 'degree', 'degrees', '1', 'kelvin|kelvins|delta-degC|Δ°C'],
  ['delta-degF', 'temperature-difference', '°F', 'degree Fahrenheit', 'degrees Fahrenheit', '5/9', 'Δ°F'],
  ['mW', 'power', 'mW', 'milliwatt', 'milliwatts', '1/1000'],
  ['W', 'power', 'W', 'watt', 'watts', '1', 'watt|watts'],
  ['kW', 'power', 'kW', 'kilowatt', 'kilowatts', '1000'],
  ['VA', 'apparent-power', 'VA', 'volt-ampere', 'volt-amperes', '1', 'volt-amps'],
  ['uV', 'voltage', 'µV', 'microvolt', 'microvolts', '1/1000000', 'µV|μV'],
  ['mV', 'voltage', 'mV', 'millivolt', 'millivolts', '1/1000'],
  ['V', 'voltage', 'V', 'volt', 'volts', '1'],
  ['mA', 'current', 'mA', 'milliamp', 'milliamps', '1/1000', 'milliampere|milliamperes'],
  ['A', 'current', 'A', 'amp', 'amps', '1', 'ampere|amperes'],
  ['mOhm', 'resistance', 'mΩ', 'milliohm', 'milliohms', '1/1000', 'mΩ'],
  ['Ohm', 'resistance', 'Ω', 'ohm', 'ohms', '1', 'Ω'],
  ['Hz', 'frequency', 'Hz', 'hertz', 'hertz', '1'],
  ['kHz', 'frequency', 'kHz', 'kilohertz', 'kilohertz', '1000'],
  ['MHz', 'frequency', 'MHz', 'megahertz', 'megahertz', '1000000', 'mhz|meg|megs'],
  ['GHz', 'frequency', 'GHz', 'gigahertz', 'gigahertz', '1000000000', 'ghz|gig|gigs'],
  ['MT/s', 'frequency', 'MT/s', 'megatransfer per second', 'megatransfers per second', '1000000'],
  ['GT/s', 'frequency', 'GT/s', 'gigatransfer per second', 'gigatransfers per second', '1000000000'],
  ['rpm', 'rotation', 'rpm', 'revolution per minute', 'revolutions per minute', '1', 'RPM|r/min|revs|revolutions|turns per minute|rotations per minute|revs per minute|times per minute'],
  ['fps', 'frame-rate', 'fps', 'frame per second', 'frames per second', '1', 'FPS|frame|frames|frames a second'],
  ['dB(A)', 'sound-level', 'dB(A)', 'decibel', 'decibels', '1', 'dBA|dB (A)|dB A|dB'],
  ['dBm', 'signal-level', 'dBm', 'decibel-milliwatt', 'decibel-milliwatts', '1'],
  ['sone', 'loudness', 'sone', 'sone', 'sones', '1'],
  ['mWh', 'energy', 'mWh', 'milliwatt-hour', 'milliwatt-hours', '18/5'],
  ['Wh', 'energy', 'Wh', 'watt-hour', 'watt-hours', '3600', 'watt hour|watt hours'],
  ['kWh', 'energy', 'kWh', 'kilowatt-hour', 'kilowatt-hours', '3600000', 'kilowatt hour|kilowatt hours'],
  ['J', 'energy', 'J', 'joule', 'joules', '1'],
  ['kJ', 'energy', 'kJ', 'kilojoule', 'kilojoules', '1000'],
  ['mAh', 'charge', 'mAh', 'milliamp-hour', 'milliamp-hours', '18/5', 'milliamp hour|milliamp hours'],
  ['Ah', 'charge', 'Ah', 'amp-hour', 'amp-hours', '3600', 'amp hour|amp hours'],
  ['ns', 'duration', 'ns', 'nanosecond', 'nanoseconds', '1/1000000000'],
  ['us', 'duration', 'µs', 'microsecond', 'microseconds', '1/1000000', 'µs|μs'],
  ['ms', 'duration', 'ms', 'millisecond', 'milliseconds', '1/1000'],
  ['s', 'duration', 's', 'second', 'seconds', '1', 'sec|secs'],
  ['min', 'duration', 'min', 'minute', 'minutes', '60', 'mins'],
  ['h', 'duration', 'h', 'hour', 'hours', '3600', 'hr|hrs'],
  ['d', 'duration', 'd', 'day', 'days', '86400'],
  ['%', 'share', '%', 'percent', 'percent', '1/100', 'per cent|pct'],
  ['points', 'points', 'points', 'percentage point', 'percentage points', '1', 'point|pp|%-points|percent points'],
  ['x', 'share', '×', 'times', 'times', '1', '×|times|fold'],
  [':1', 'count', ':1', '', '', '1'],
  ['mg', 'mass', 'mg', 'milligram', 'milligrams', '1/1000'],
  ['g', 'mass', 'g', 'gram', 'grams', '1', 'gramme|grammes'],
  ['kg', 'mass', 'kg', 'kilogram', 'kilograms', '1000', 'kilo|kilos|kilogramme|kilogrammes'],
  ['lb', 'mass', 'lb', 'pound', 'pounds', '45359237/100000', 'lbs'],
  ['oz', 'mass', 'oz', 'ounce', 'ounces', '45359237/1600000'],
  ['um', 'length', 'µm', 'micrometre', 'micrometres', '1/1000000', 'µm|μm|micron|microns'],
  ['mm', 'length', 'mm', 'millimetre', 'millimetres', '1/1000', 'millimeter|millimeters'],
  ['cm', 'length', 'cm', 'centimetre', 'centimetres', '1/100', 'centimeter|centimeters'],
  ['m', 'length', 'm', 'metre', 'metres', '1', 'meter|meters'],
  ['in', 'length', 'in', 'inch', 'inches', '127/5000', '″'],
  ['ft', 'length', 'ft', 'foot', 'feet', '381/1250'],
  ['m/s', 'speed', 'm/s', 'metre per second', 'metres per second', '1', 'meter per second|meters per second|metres a second|meters a second'],
  ['mm/s', 'speed', 'mm/s', 'millimetre per second', 'millimetres per second', '1/1000', 'millimeter per second|millimeters per second'],
  ['mL', 'volume', 'mL', 'millilitre', 'millilitres', '1/1000', 'ml|milliliter|milliliters'],
  ['L', 'volume', 'L', 'litre', 'litres', '1', 'l|liter|liters'],
  ['m3', 'volume', 'm³', 'cubic metre', 'cubic metres', '1000', 'cubic meter|cubic meters'],
  ['gal', 'volume', 'gal', 'gallon', 'gallons', '473176473/125000000'],
  ['mL/min', 'flow', 'mL/min', 'millilitre per minute', 'millilitres per minute', '1/1000', 'ml/min'],
  ['L/min', 'flow', 'L/min', 'litre per minute', 'litres per minute', '1', 'l/min|lpm|LPM|liter per minute|liters per minute|litres a minute|liters a minute'],
  ['L/s', 'flow', 'L/s', 'litre per second', 'litres per second', '60', 'l/s|liter per second|liters per second'],
  ['L/h', 'flow', 'L/h', 'litre per hour', 'litres per hour', '1/60', 'l/h|lph|LPH|liter per hour|liters per hour|litres an hour|liters an hour'],
  ['gal/min', 'flow', 'gal/min', 'gallon per minute', 'gallons per minute', '473176473/125000000', 'gpm|GPM|gallons a minute'],
  ['gal/h', 'flow', 'gal/h', 'gallon per hour', 'gallons per hour', '157725491/2500000000', 'gph|GPH'],
  ['m3/h', 'air-flow', 'm³/h', 'cubic metre per hour', 'cubic metres per hour', '1', 'm³/h|cubic meters per hour'],
  ['ft3/min', 'air-flow', 'ft³/min', 'cubic foot per minute', 'cubic feet per minute', '10618817472/6250000000', 'ft³/min|cfm|CFM'],
  ['Pa', 'pressure', 'Pa', 'pascal', 'pascals', '1'],
  ['hPa', 'pressure', 'hPa', 'hectopascal', 'hectopascals', '100'],
  ['kPa', 'pressure', 'kPa', 'kilopascal', 'kilopascals', '1000'],
  ['bar', 'pressure', 'bar', 'bar', 'bar', '100000', 'bars'],
  ['mbar', 'pressure', 'mbar', 'millibar', 'millibar', '100', 'millibars'],
  ['psi', 'pressure', 'psi', 'pound per square inch', 'pounds per square inch', '8896443230521/1290320000'],
  ['mmH2O', 'pressure', 'mmH₂O', 'millimetre of water', 'millimetres of water', '980665/100000', 'mmH₂O'],
  ['inH2O', 'pressure', 'inH₂O', 'inch of water', 'inches of water', '24908891/100000', 'inH₂O|inches of water column'],
  ['B', 'data', 'B', 'byte', 'bytes', '1'],
  ['kB', 'data', 'kB', 'kilobyte', 'kilobytes', '1000', 'KB'],
  ['MB', 'data', 'MB', 'megabyte', 'megabytes', '1000000'],
  ['GB', 'data', 'GB', 'gigabyte', 'gigabytes', '1000000000'],
  ['TB', 'data', 'TB', 'terabyte', 'terabytes', '1000000000000'],
  ['KiB', 'data', 'KiB', 'kibibyte', 'kibibytes', '1024'],
  ['MiB', 'data', 'MiB', 'mebibyte', 'mebibytes', '1048576'],
  ['GiB', 'data', 'GiB', 'gibibyte', 'gibibytes', '1073741824'],
  ['TiB', 'data', 'TiB', 'tebibyte', 'tebibytes', '1099511627776'],
  ['kB/s', 'data-rate', 'kB/s', 'kilobyte per second', 'kilobytes per second', '1000', 'KB/s|kilobytes a second'],
  ['MB/s', 'data-rate', 'MB/s', 'megabyte per second', 'megabytes per second', '1000000', 'MBps|megabytes a second'],
  ['GB/s', 'data-rate', 'GB/s', 'gigabyte per second', 'gigabytes per second', '1000000000', 'GBps|gigabytes a second'],
  ['TB/s', 'data-rate', 'TB/s', 'terabyte per second', 'terabytes per second', '1000000000000', 'TBps|terabytes a second'],
  ['MiB/s', 'data-rate', 'MiB/s', 'mebibyte per second', 'mebibytes per second', '1048576'],
  ['GiB/s', 'data-rate', 'GiB/s', 'gibibyte per second', 'gibibytes per second', '1073741824'],
  ['IOPS', 'operations', 'IOPS', 'operation per second', 'operations per second', '1', 'operations a second'],
  ['Mbit/s', 'data-rate', 'Mbit/s', 'megabit per second', 'megabits per second', '125000', 'Mbps|megabits a second'],
  ['Gbit/s', 'data-rate', 'Gbit/s', 'gigabit per second', 'gigabits per second', '125000000', 'Gbps|gigabits a second'],
  ['lx', 'illuminance', 'lx', 'lux', 'lux', '1', 'lux'],
  ['lm', 'luminous-flux', 'lm', 'lumen', 'lumens', '1'],
  ['cd/m2', 'illuminance', 'cd/m²', 'candela per square metre', 'candelas per square metre', '1', 'nit|nits|cd/m²'],
  ['tokens/s', 'throughput', 'tokens/s', 'token per second', 'tokens per second', '1', 'tok/s|tokens a second'],
  ['cN', 'force', 'cN', 'centinewton', 'centinewtons', '1/100'],
  ['gf', 'force', 'gf', 'gram-force', 'grams-force', '980665/100000000'],
  ['N', 'force', 'N', 'newton', 'newtons', '1'],
  ['N*m', 'torque', 'N·m', 'newton metre', 'newton metres', '1', 'Nm|N·m|newton meter|newton meters'],
  ['W/(m*K)', 'conductivity', 'W/(m·K)', 'watt per metre and kelvin', 'watts per metre and kelvin', '1', 'W/(m·K)|W/mK|W/m·K|W/m*K|W/m-K'],
  ['EUR', 'money', '€', 'euro', 'euros', '1', '€'],
  ['USD', 'money', '$', 'dollar', 'dollars', '1', '$|bucks'],
  ['GBP', 'money', '£', 'pound', 'pounds', '1', '£|quid'],
  ['CHF', 'money', 'CHF', 'Swiss franc', 'Swiss francs', '1'],
  ['CAD', 'money', 'CAD', 'Canadian dollar', 'Canadian dollars', '1'],
  ['AUD', 'money', 'AUD', 'Australian dollar', 'Australian dollars', '1'],
  ['NZD', 'money', 'NZD', 'New Zealand dollar', 'New Zealand dollars', '1'],
  ['JPY', 'money', 'JPY', 'yen', 'yen', '1'],
  ['CNY', 'money', 'CNY', 'yuan', 'yuan', '1'],
  ['INR', 'money', 'INR', 'rupee', 'rupees', '1'],
  ['KRW', 'money', 'KRW', 'South Korean won', 'South Korean won', '1'],
  ['BRL', 'money', 'BRL', 'Brazilian real', 'Brazilian reais', '1'],
  ['SEK', 'money', 'SEK', 'Swedish krona', 'Swedish kronor', '1'],
  ['NOK', 'money', 'NOK', 'Norwegian krone', 'Norwegian kroner', '1'],
  ['DKK', 'money', 'DKK', 'Danish krone', 'Danish kroner', '1'],
  ['PLN', 'money', 'PLN', 'zloty', 'zlotys', '1'],
  ['CZK', 'money', 'CZK', 'Czech koruna', 'Czech korunas', '1'],
  ['crowns', 'money', 'crowns', 'crown', 'crowns', '1', 'crown'],
  ['frame-count', 'count', 'frames', 'frame', 'frames', '1'],
  ['1', 'count', '', '', '', '1', 'count'],
  ['score', 'score', 'points', 'point', 'points', '1', 'pts'],
];

function fraction(text: string): Exact {
  const [n, d = '1'] = text.split('/');
  return Exact.of(BigInt(n!), BigInt(d));
}

export const units: ReadonlyMap<string, Unit> = new Map(
  rows.map(([id, dimension, symbol, one, many, factor, also, extra]) => [id, {
    id, dimension, symbol, one, many,
    also: also ? also.split('|') : [],
    factor: fraction(factor),
    offset: fraction(extra?.offset ?? '0'),
    difference: extra?.difference,
  } satisfies Unit]),
);

const exactly = new Map<string, Unit>();
const loosely = new Map<string, Unit>();
for (const u of units.values()) {
  for (const name of [u.id, u.symbol, u.one, u.many, ...u.also]) {
    if (!name) continue;
    if (!exactly.has(name)) exactly.set(name, u);
    if (!caseMatters(name, u) && !loosely.has(name.toLowerCase())) loosely.set(name.toLowerCase(), u);
  }
}

/** A symbol whose other case would be another unit: mW and MW, MB/s and Mb/s, Nm and nm, K and the prefix k. */
function caseMatters(name: string, u: Unit): boolean {
  if (/[A-Za-z]{5}/.test(name)) return false;
  if (['data', 'data-rate', 'force', 'torque'].includes(u.dimension) || name === 'K') return true;
  return /^[mM]/.test(name) && ['power', 'voltage', 'current', 'resistance', 'energy', 'charge', 'length'].includes(u.dimension);
}

/** The unit that a person writes as `name`. Case decides where it must (mW, MW), and is forgiven where only one can be meant. */
export function findUnit(name: string): Unit | undefined {
  const plain = name.trim().replace(/\s+/g, ' ');
  return exactly.get(plain) ?? compound(plain) ?? loosely.get(plain.toLowerCase()) ?? spelledCompound(plain);
}

/** The unit with this id, compound ids ("fps/W") included; throws RangeError on an unknown id: ids come from code or were checked when read. */
export function unit(id: string): Unit {
  const u = units.get(id) ?? compound(id) ?? made.get(id);
  if (!u) throw new RangeError(`no unit ${id}`);
  return u;
}

const made = new Map<string, Unit>();

/** A unit that the table does not know, taken at its word: comparable with itself and nothing else. Shown and said as written. */
export function ownUnit(name: string): Unit {
  const id = name.trim();
  let u = made.get(id);
  if (!u) made.set(id, (u = { id, dimension: 'compound', symbol: id, one: id.replace(/s$/, ''), many: id, also: [], factor: Exact.of(1), offset: Exact.zero }));
  return u;
}

/** "fps/W": one unit for each of another, made when first asked for. Frames for each joule are counted, no rate. */
export function perUnit(top: Unit, bottom: Unit): Unit {
  return unit(`${counted(top, bottom)}/${bottom.id}`);
}

function counted(top: Unit, bottom: Unit): string {
  return top.id === 'fps' && bottom.dimension === 'energy' ? 'frame-count' : top.id;
}

const compounds = new Map<string, Unit>();
function compound(id: string): Unit | undefined {
  const known = compounds.get(id);
  if (known) return known;
  const cut = id.lastIndexOf('/');
  if (cut <= 0) return undefined;
  const top = units.get(id.slice(0, cut));
  const bottom = units.get(id.slice(cut + 1));
  if (!top || !bottom) return undefined;
  const made: Unit = {
    id, dimension: 'compound', symbol: `${top.symbol}/${bottom.symbol}`,
    one: `${top.one} per ${bottom.one}`, many: `${top.many} per ${bottom.one}`,
    also: [], factor: top.factor.over(bottom.factor), offset: Exact.zero, parts: [top, bottom],
  };
  compounds.set(id, made);
  return made;
}

/** "frames per watt", "°C/W" (where a difference is meant: so many kelvins for each watt). */
function spelledCompound(name: string): Unit | undefined {
  const m = /^(.+)(?:\/| per )(.+)$/.exec(name);
  const top = m && (exactly.get(m[1]!.trim()) ?? loosely.get(m[1]!.trim().toLowerCase()));
  const bottom = m && (exactly.get(m[2]!.trim()) ?? loosely.get(m[2]!.trim().toLowerCase()));
  return top && bottom ? compound(`${differenceUnit(top).id === 'points' ? top.id : counted(differenceUnit(top), bottom)}/${bottom.id}`) : undefined;
}

/** Dimensions whose units are of one kind but no multiples of each other: currencies, lux and candela, scores. */
const unrelated: ReadonlySet<Dimension> = new Set(['money', 'compound', 'illuminance', 'score']);

/** A value in `from` expressed in `to`; undefined when that cannot be told from the units alone. */
export function convert(value: Exact, from: Unit, to: Unit): Exact | undefined {
  if (from.id === to.id) return value;
  if (!alike(from, to)) return undefined;
  return value.times(from.factor).plus(from.offset).minus(to.offset).over(to.factor);
}

function alike(a: Unit, b: Unit): boolean {
  if (a.id === b.id) return true;
  if (a.parts && b.parts) return alike(a.parts[0], b.parts[0]) && alike(a.parts[1], b.parts[1]);
  return a.dimension === b.dimension && !unrelated.has(a.dimension);
}

/** The unit in which a difference of two values in `u` is given. */
export function differenceUnit(u: Unit): Unit {
  return u.id === '%' ? unit('points') : u.difference ? unit(u.difference) : u;
}
