// The index over all episodes.
import { colourRules } from './palette.js';
import { dateShown } from './places-of.js';
import { fill, type TemplateReader } from './templates.js';

export interface IndexCard {
  id: string;
  title: string;
  date?: string;
  summary?: string;
  draft: boolean;
  readings: number;
  facts: number;
  warnings: number;
}

export interface IndexPage {
  cards: readonly IndexCard[];
  draft: boolean;
  /** Whether something in an episode counts as an error. */
  unsound?: boolean;
  template: TemplateReader;
}

/** Newest first; undated ones last, then by id. */
export function renderIndex({ cards, draft, unsound = draft, template }: IndexPage): string {
  const sorted = [...cards].sort((a, b) => ((a.date ?? '') < (b.date ?? '') ? 1 : (a.date ?? '') > (b.date ?? '') ? -1 : a.id < b.id ? -1 : 1));
  return fill(template('page/index.hbs'), {
    css: colourRules() + template('page/page.css'),
    draft, unsound,
    empty: cards.length === 0,
    cards: sorted.map((c) => ({
      href: `${encodeURIComponent(c.id)}/index.html`, title: c.title || c.id, date: c.date ?? '', dateShown: c.date ? dateShown(c.date) : '', summary: c.summary ?? '', draft: c.draft,
      counts: [count(c.readings, 'reading'), count(c.facts, 'fact'), ...(c.warnings ? [count(c.warnings, 'open warning')] : [])].join(', '),
    })),
  });
}

function count(n: number, what: string): string {
  return `${String(n).replace(/\B(?=(\d{3})+$)/g, ',')} ${what}${n === 1 ? '' : 's'}`;
}
