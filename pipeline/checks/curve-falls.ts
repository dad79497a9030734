// A control curve that turns down as it gets hotter.
import { convert, show } from '../quantities/index.js';
import { type Check, type Report, yaml } from './check.js';

export const curveFalls: Check = {
  name: 'curve-falls',
  says: 'A fan or pump curve falls as the temperature rises, or has two values at one point.',
  why: 'A curve that slows down when it gets hotter was most likely typed in the wrong order.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    curves:
      fans: {name: Fans, of: {label: Fan duty, unit: "%"}, against: {label: Core, unit: °C}, points: {40 °C: 30 %, 60 °C: 55 %, 80 °C: 100 %}}
    readings: [{for: {setup: bench}, temperature/core: {load: 61 °C}}]
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    curves:
      fans: {name: Fans, of: {label: Fan duty, unit: "%"}, against: {label: Core, unit: °C}, points: {40 °C: 55 %, 60 °C: 30 %, 80 °C: 100 %}} # expect
    readings: [{for: {setup: bench}, temperature/core: {load: 61 °C}}]
  `) },
  run({ episode }) {
    return episode.curves.flatMap((curve): Report[] => {
      const value = (q: { value: typeof curve.points[0]['at']['value']; unit: typeof curve.of.unit }, unit: typeof curve.of.unit) => convert(q.value, q.unit, unit) ?? q.value;
      const points = curve.points.map((p) => ({ ...p, x: value(p.at, curve.against.unit), y: value(p.value, curve.of.unit) })).sort((a, b) => a.x.compare(b.x));
      const controls = curve.against.unit.dimension === 'temperature' && ['share', 'rotation', 'flow'].includes(curve.of.unit.dimension);
      const odd = points.findIndex((p, i) => i > 0 && ((p.x.equals(points[i - 1]!.x) && !p.y.equals(points[i - 1]!.y)) || (controls && p.y.compare(points[i - 1]!.y) < 0)));
      if (odd < 0) return [];
      const [before, at] = [points[odd - 1]!, points[odd]!];
      const tell = (p: typeof at): string => `${show(p.y, curve.of.unit, p.value.decimals)} at ${show(p.x, curve.against.unit, p.at.decimals)}`;
      return [{ place: curve.place, subject: curve.id, said: tell(at), recorded: tell(before), message: `${curve.name}: ${tell(at)} after ${tell(before)}` }];
    });
  },
};
