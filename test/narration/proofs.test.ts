// What the narration room writes, the proofreader reads: no sentence about a demo episode may be called wrong.
import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { open } from '../../pipeline/build.js';
import { proof } from '../../pipeline/claims/index.js';
import { narrate } from '../../pipeline/narration/index.js';
import { Source } from '../../pipeline/places/index.js';

const data = resolve(import.meta.dirname, '../../data');
const ids = readdirSync(data, { withFileTypes: true }).filter((e) => e.isDirectory()).map((e) => e.name).sort();
const { episodes } = open({ data, only: [] });

test.each(ids.flatMap((id) => (['words', 'digits'] as const).map((form) => [id, form] as const)))('%s in %s', async (id, form) => {
  const facts = (await episodes.facts(id))!;
  const sentences = narrate(facts, { form });
  expect(sentences.length).toBeGreaterThan(3);
  const lines = sentences.flatMap((s, i) => [...(s.section === sentences[i - 1]?.section ? [] : [`## ${s.section}`, '']), s.text, '']);
  const { mentions } = proof(new Source('narration.md', lines.join('\n')), facts);
  expect(mentions.filter((m) => m.verdict === 'disagrees').map((m) => `${lines[m.place.line - 1]} ← ${m.text}: ${m.recorded}`)).toEqual([]);
  expect(mentions.filter((m) => m.verdict === 'agrees').length).toBeGreaterThan(sentences.length);
});
