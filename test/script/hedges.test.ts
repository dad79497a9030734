// Each hedge at both its edges: the last value that it allows and the first that it does not.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readNames, readReadings } from '../../pipeline/records/index.js';
import { findMentions } from '../../pipeline/script/mentions.js';
import { hedges } from '../../pipeline/script/hedges.js';
import { tokens } from '../../pipeline/script/tokens.js';

const said = 1000;
const names = readNames(new Source('names.csv', 'kind,id,spoken\nsetup,tarnel,the Tarnel\nmeasure,power,power\npart,board,board power\n')).value!;

/** The verdict on "1000 watts" with a hedge, where the record has `exact`. */
function verdict(words: string, after: boolean, exact: number): string {
  const table = new Source('readings.csv', `setup,setting,workload,measure,part,phase,run,value,unit\ntarnel,,,power,board,load,1,${exact},W\n`);
  const facts = new Facts(bareEpisode(readReadings(table).value!, names, table.place(0)));
  const text = after ? `The board power of the Tarnel is ${said} watts ${words}.` : `The board power of the Tarnel is ${words} ${said} watts.`;
  return proof(new Source('script.md', text), facts).mentions.map((m) => m.verdict).filter((v) => v !== 'not-a-claim').join(' ');
}

describe.each(hedges.map((h) => ({ ...h, title: `${h.name}${h.after ? ' (after the number)' : ''}`, hedge: h })))('$title', ({ words, low, high, rounds, after, hedge }) => {
  test.each(words)('"%s" is heard', (w) => {
    const text = after ? `draws 1000 watts ${w}` : `draws ${w} 1000 watts`;
    expect(findMentions(tokens(text)).filter((m) => m.type !== 'superlative').map((m) => [String(m.value), m.hedge?.name, m.unit?.id])).toEqual([[String(said), hedge.name, 'W']]);
  });

  test.each(words)('"%s" loosens', (w) => {
    expect(verdict(w, after ?? false, (said * (low + high)) / 2)).toBe('agrees');
  });

  const w = words[0]!;
  // A strict edge lies at the figure itself; a rounded figure may lie half its last place beyond.
  const edge = rounds ? 0.5 : 0;
  const least = low === 1 ? said + (rounds ? 0 : 0.1) : said * low;
  const most = high === 1 ? said - (rounds ? 0 : 0.1) : said * high;
  test.each([['lowest', least], ['highest', most]] as const)(`${w}: agrees at its %s, %d`, (_, exact) => {
    expect(verdict(w, after ?? false, exact)).toBe('agrees');
  });
  test.each([['below', least - edge - 0.2], ['above', most + edge + 0.2]] as const)(`${w}: not right just %s, at %d`, (_, exact) => {
    // Whether it is an alarm as well is a matter of how sure the subject is.
    expect(verdict(w, after ?? false, exact)).toMatch(/^(?:disagrees|untied)$/);
  });
});

test('no words stand in two rows on the same side of the number', () => {
  for (const side of [true, undefined]) {
    const all = hedges.filter((h) => h.after === side).flatMap((h) => h.words);
    expect(all.filter((w, i) => all.indexOf(w) !== i)).toEqual([]);
  }
});
