// What a watt and a unit of money buy.
import { Exact } from '../../quantities/index.js';
import { type Facts, isFact, kelvinPerWatt, type Key, perPriceOf, roomParts } from '../../facts/index.js';
import type { Point, Scene, Stage } from '../scenes.js';
import type { Draft } from '../sentence.js';
import { definite, namedOf, noun } from '../names.js';
import { quantity, subject } from '../subject.js';

export function efficiency(stage: Stage, scene: Scene, section: string): Draft[] {
  const power = powerOf(stage.facts, scene);
  return [...resistances(stage, scene, section), ...scene.points.filter((p) => isPerformance(stage.facts, p.key)).flatMap((p) => [...perWatt(stage, p, power, section), ...perPrice(stage, p, section)])];
}

/** Nobody follows "zero point zero five three four"; such figures are left to the page. Common practice, no published source. */
const sayable = Exact.of(1, 10);

/** Frame rates, data rates and scores, and whatever else the record says is better higher and no power, clock or voltage. */
function isPerformance(facts: Facts, key: Key): boolean {
  const value = facts.value(key);
  return isFact(value) && ['frame-rate', 'data-rate', 'score', 'flow', 'air-flow'].includes(value.unit.dimension);
}

/** The one power of a scene under load; undefined where there are several, since a watt of one is not a watt of another. */
function powerOf(facts: Facts, scene: Scene): Point | undefined {
  const powers = scene.points.filter((p) => {
    const f = facts.value(p.key);
    return isFact(f) && f.unit.dimension === 'power';
  });
  return powers.length === 1 ? powers[0] : undefined;
}

function perWatt(stage: Stage, { key, parts }: Point, power: Point | undefined, section: string): Draft[] {
  if (!power || power.parts.phase !== parts.phase) return [];
  const fact = stage.facts.derive('per_watt', [key, power.key]);
  if (!isFact(fact) || fact.value.compare(sayable) < 0 || isMeasured(stage.facts, fact.unit.id)) return [];
  const [what, of] = [definite(quantity(stage, parts)), quantity(stage, power.parts)];
  return [{ section, facts: [fact], text: (v) => `${stage.opening(parts)}${what} came to ${v.say(fact)} of ${of} ${stage.when({ key, parts })}` }];
}

/** A record that has efficiency among its readings says it by those; a second figure in the same unit would only confuse. */
function isMeasured(facts: Facts, unit: string): boolean {
  return facts.keys().some((key) => facts.readings(key).some((r) => r.quantity.unit.id === unit));
}

/** Degrees over the room for each watt: of what draws by itself, else of the first temperature of the thing tested. */
function resistances(stage: Stage, scene: Scene, section: string): Draft[] {
  const hot = scene.points.filter((p) => p.parts.measure === 'temperature' && !roomParts.includes(p.parts.part));
  return hot.flatMap((point, i): Draft[] => {
    const found = kelvinPerWatt(stage.facts, point.key);
    const power = found && stage.points.find((p) => p.key === found.power);
    const value = stage.facts.value(point.key);
    if (!found || !power || !isFact(value) || (i > 0 && !found.own) || found.fact.value.compare(sayable) < 0) return [];
    const of = quantity(stage, power.parts);
    return [{ section, facts: [found.fact], text: (v) => `${stage.opening(point.parts)}${subject(stage, point.parts, value.unit)} was ${v.say(found.fact)} of ${of} over the room ${stage.when(point)}` }];
  });
}

function perPrice(stage: Stage, { key, parts }: Point, section: string): Draft[] {
  const fact = perPriceOf(stage.facts, key);
  if (!fact || fact.value.compare(sayable) < 0) return [];
  // Never "its price": that would be the price of whatever the sentence is about.
  const priced = noun(namedOf(stage.facts, 'setup', parts.setup));
  return [{ section, facts: [fact], text: (v) => `${stage.opening(parts)}${definite(quantity(stage, parts))} came to ${v.say(fact)}${priced ? ` of the price of ${priced}` : ''} ${stage.when({ key, parts })}` }];
}
