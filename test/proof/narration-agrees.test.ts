// Every sentence that the narration room writes is read back as it was meant: nothing in it disagrees, nothing stays untied.
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { open } from '../../pipeline/build.js';
import { proof } from '../../pipeline/claims/index.js';
import type { Facts } from '../../pipeline/facts/index.js';
import { cautionsFor } from '../../pipeline/cautions/index.js';
import { narrate, narrationText } from '../../pipeline/narration/index.js';
import { Source } from '../../pipeline/places/index.js';
import { trialFolders } from '../trials/folders.js';
import { factsOf } from '../trials/score-in-process.js';

const data = join(import.meta.dirname, '../../data');
const trials = join(import.meta.dirname, '../trials');
const { episodes, asked } = open({ data, only: [], cache: undefined });

function unread(facts: Facts, form: 'words' | 'digits'): { odd: string[]; agree: number } {
  const sentences = narrate(facts, { form });
  const lines = sentences.flatMap((s, i) => [...(s.section === sentences[i - 1]?.section ? [] : ['', `## ${s.section}`, '']), s.text]);
  const { mentions } = proof(new Source('narration.md', lines.join('\n')), facts);
  const odd = mentions.filter((m) => m.verdict === 'disagrees' || m.verdict === 'untied');
  return { odd: odd.map((m) => `${m.verdict} "${m.text}" (${m.facts[0]}): ${lines[m.place.line - 1]}`), agree: mentions.filter((m) => m.verdict === 'agrees').length };
}

describe.each(['words', 'digits'] as const)('in %s', (form) => {
  test.each(asked)('episode %s', async (id) => {
    const { odd, agree } = unread((await episodes.facts(id))!, form);
    expect(odd).toEqual([]);
    expect(agree).toBeGreaterThan(10);
  });
  test.each(asked)('episode %s, with what is disclosed, corrected and cautioned', async (id) => {
    const facts = (await episodes.facts(id))!;
    const text = narrationText(facts, narrate(facts, { form }), cautionsFor(facts));
    const { mentions, findings } = proof(new Source('narration.md', text), facts);
    const lines = text.split('\n');
    expect(mentions.filter((m) => m.verdict === 'disagrees' || m.verdict === 'untied').map((m) => `${m.verdict} "${m.text}" (${m.facts[0]}): ${lines[m.place.line - 1]}`)).toEqual([]);
    expect(findings.filter((f) => f.severity === 'error')).toEqual([]);
  });
  test.each(trialFolders())('trial tables %s', (name) => {
    const { odd, agree } = unread(factsOf(join(trials, name)), form);
    expect(odd).toEqual([]);
    expect(agree).toBeGreaterThan(10);
  });
});
