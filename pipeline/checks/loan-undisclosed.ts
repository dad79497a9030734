// A loan or a gift that the viewer is not told of.
import { type Check, yaml } from './check.js';

export const loanUndisclosed: Check = {
  name: 'loan-undisclosed',
  says: 'Something was lent, sponsored or given, and the disclosures do not mention it.',
  why: 'What stands in the list of parts is not yet said to the viewer; the disclosures are.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    disclosures: [The Ash was lent by its maker and has gone back.]
    setups: {a: {name: Ash, kind: product, obtained: lent}}
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  wrong: { record: yaml(`
    title: Wrong
    disclosures: [Nobody saw this episode before it was published.]
    setups:
      a: {name: Ash, kind: product, obtained: lent} # expect
    readings: [{for: {setup: a}, mass/cooler: {weighed: 720 g}}]
  `) },
  run({ episode }) {
    const things = [...[...episode.setups.values()].map((s) => ({ ...s, subject: s.id })), ...episode.system.map((p) => ({ ...p, subject: p.name }))];
    return things.flatMap(({ name, subject, obtained, place }) => {
      const words = obtained && told[obtained];
      if (!words || episode.disclosures.some(({ text }) => words.test(text))) return [];
      return [{ place, subject, said: obtained, message: `${name} was ${obtained}, and no disclosure says so` }];
    });
  },
};

const told: Record<string, RegExp | undefined> = {
  lent: /\b(lent|loan\w*|lend\w*|borrow\w*|goes back|gone back|returned)\b/i,
  sponsored: /\bsponsor\w*|\bpaid\b/i,
  given: /\b(gave|given|gift\w*|free|provided|sent)\b/i,
};
