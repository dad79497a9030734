// Names that a person could type, or somebody could send.
import { describe, expect, test } from 'vitest';
import { Facts } from '../../pipeline/facts/index.js';
import { prepareChart } from '../../pipeline/charts/index.js';
import { tags } from '../../pipeline/theme/xml.js';
import { expectWellSet } from './boxes.js';
import { place, sample } from './sample.js';
import { wide } from '../theme/stages.js';

function named(name: string): Facts {
  return new Facts(sample({
    setups: { a: name, b: 'Plain' }, settings: { stock: 'Stock' }, workloads: { scene: 'Scene' }, measures: { power: ['Power', 'lower'] }, parts: { board: 'Board' },
    readings: { 'a/stock/scene/power/board/load': '100 101 W', 'b/stock/scene/power/board/load': '90 91 W' },
  }));
}
const request = { kind: 'ranked', name: 'power', measure: 'power', place };

describe('shown as they are, escaped', () => {
  test.each(['<script>x</script>', 'R&D "Quoted" \'one\'', 'a</text><rect/>', '{{name}} ${x}', 'datum.value', 'Ж Ωmega ½', '50 % × 2 −1 °C'])('%s', async (name) => {
    const { value, findings } = prepareChart(request, named(name), wide);
    expect(findings).toEqual([]);
    const { svg, outlined } = await value!.draw();
    expect(expectWellSet(svg).map((b) => b.text).join(' ').replaceAll('\u00a0', ' ')).toContain(name.split(' ')[0]!);
    for (const drawn of [svg, outlined]) {
      const names = new Set([...tags(drawn)].map((t) => t.name));
      expect(names.has('script')).toBe(false);
      const open: string[] = [];
      for (const t of tags(drawn)) {
        if (t.kind === 'open') open.push(t.name);
        if (t.kind === 'close') expect(open.pop()).toBe(t.name);
      }
      expect(open).toEqual([]);
    }
    expect(value!.alt).toContain(name);
  });
});

describe('refused with a reason', () => {
  test.each([
    ['שולחן פתוח', 'missing-glyph'], ['😀 Bench', 'missing-glyph'], ['試験台', 'missing-glyph'], ['a\u202eb', 'missing-glyph'], ['tab\u0007bell', 'missing-glyph'],
    ['W'.repeat(80), 'label-too-long'],
    ['A very long name of a setup that nobody could read on a phone in the time it stands there', 'label-too-long'],
  ])('%s', (name, code) => {
    const { value, findings } = prepareChart(request, named(name), wide);
    expect(value).toBeUndefined();
    expect(findings.map((f) => f.code)).toContain(code);
    for (const f of findings) {
      expect(f.severity).toBe('error');
      expect(f.place).toBe(place);
      expect(f.message).not.toMatch(/[\p{Cc}\u202a-\u202e]/u);
    }
  });
});

describe('requests that cannot be met', () => {
  test.each([
    [{ kind: 'ranked', measure: 'powr' }, 'picture-empty', 'did you mean "power"?'],
    [{ kind: 'ranked', measure: 'power', part: 'bord' }, 'picture-empty', 'did you mean "board"?'],
    [{ kind: 'ranked', measure: 'power', setups: ['a', 'c'] }, 'picture-empty', 'asks for setup "c"'],
    [{ kind: 'ranked', measure: 'power', phase: 'idle' }, 'picture-empty', 'no readings of phase "idle"'],
    [{ kind: 'ranked', facts: ['mean:x/y/z/power/board/load'] }, 'picture-empty', 'no reading of'],
    [{ kind: 'ranked', facts: ['nonsense'] }, 'picture-empty', 'it is no fact of this record'],
    [{ kind: 'bars-idle-load', measure: 'power' }, 'picture-empty', 'both at idle and under load'],
    [{ kind: 'share-of-limit', measure: 'power' }, 'picture-empty', 'needs a limit'],
    [{ kind: 'trace', measure: 'power' }, 'picture-empty', 'needs a log'],
    [{ kind: 'curve', text: 'fans' }, 'picture-empty', 'needs a curve'],
    [{ kind: 'pie' }, 'picture-kind', 'there is no chart "pie"'],
  ])('%o', (asked, code, words) => {
    const { value, findings } = prepareChart({ name: 'power', place, ...asked }, named('Bench'), wide);
    expect(value).toBeUndefined();
    expect(findings.map((f) => f.code)).toContain(code);
    expect(findings.map((f) => f.message).join('\n')).toContain(words);
  });
});
