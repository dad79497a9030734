// One page with every picture of an episode, as it will be seen: over light, dark and busy footage, large, on a phone, and by every eye.
import { type Deficiency, deficiencies } from '../theme/index.js';
import { acceptedFindings, openFindings, type PageFinding } from './findings.js';
import { colourRules } from './palette.js';
import { fill, type TemplateReader } from './templates.js';

export interface SheetPicture {
  /** `NN-NAME`. */
  stem: string;
  kind: string;
  title: string;
  alt: string;
  why: string;
  /** Hash of all that it was made from. */
  from: string;
  facts: readonly { id: string; shown: string }[];
  /** Still files, the first of them the one that is looked at. */
  stills: readonly { name: string; width: number; height: number }[];
  /** An animation of it, where it moves, and how. */
  moving?: { name: string; width: number; height: number; build: string };
  /** Names of all its files. */
  files: readonly string[];
}

export interface ContactSheet {
  title: string;
  draft: boolean;
  pictures: readonly SheetPicture[];
  /** What was found wrong with pictures, those that could not be made included. */
  findings: readonly PageFinding[];
  template: TemplateReader;
}

/** How wide a phone shows a picture, and how high an upright one. */
const phone = { width: 640, height: 640 } as const;

/** Four stand side by side. */
const eyeSize = { width: 440, height: 440 } as const;

const grounds = [{ id: 'light', name: 'light footage' }, { id: 'dark', name: 'dark footage' }, { id: 'busy', name: 'busy footage' }] as const;

const eyes: Record<Deficiency, string> = { protan: 'without red cones', deutan: 'without green cones', tritan: 'without blue cones' };

export function renderContactSheet({ title, draft, pictures, findings, template }: ContactSheet): string {
  return fill(template('page/contact-sheet.hbs'), {
    css: colourRules() + template('page/page.css') + template('page/contact-sheet.css'),
    title, draft, empty: pictures.length === 0, count: `${pictures.length} picture${pictures.length === 1 ? '' : 's'}`,
    filters: Object.entries(deficiencies).map(([id, rows]) => ({ id, values: [...rows.map((row) => `${row.join(' ')} 0 0`), '0 0 0 1 0'].join(' ') })),
    open: openFindings(findings), accepted: acceptedFindings(findings),
    pictures: pictures.map((p, i) => view(p, i)),
  });
}

function view(p: SheetPicture, i: number): object {
  const [main, ...others] = p.stills;
  const name = p.title || p.stem;
  const tile = (still: { name: string; width: number; height: number }, most: { width: number; height: number }) => {
    const scale = Math.min(1, most.width / still.width, most.height / still.height);
    return { src: still.name, width: Math.round(still.width * scale), height: Math.round(still.height * scale) };
  };
  // A larger file of the same layout shows nothing new.
  const layout = (s: { name: string; width: number; height: number }): string => `${s.name.replace(/-\d+x\d+\.\w+$/, '')} ${s.width / s.height}`;
  const shapes = others.filter((s, j) => main && layout(s) !== layout(main) && others.findIndex((o) => layout(o) === layout(s)) === j);
  return {
    id: `picture-${i + 1}`, number: p.stem.slice(0, p.stem.indexOf('-')), name, label: `${p.stem.slice(0, p.stem.indexOf('-'))} ${name}`, kind: p.kind, alt: p.alt, why: p.why, from: p.from,
    small: main ? grounds.map((g) => ({ ground: g.id, groundName: g.name, ...tile(main, phone) })) : [],
    large: main ? grounds.map((g) => ({ ground: g.id, groundName: g.name, ...tile(main, { width: 1920, height: 1920 }) })) : [],
    seen: main ? [...Object.entries(eyes).map(([id, words]) => ({ eye: id, words, ...tile(main, eyeSize) })), { eye: 'grey', words: 'in a grey print', ...tile(main, eyeSize) }] : [],
    shapes: shapes.map((s) => ({ ...tile(s, { width: 480, height: 640 }), words: `${s.width} × ${s.height}` })),
    moving: p.moving ? { ...tile(p.moving, phone), words: { in: 'comes in', out: 'goes out', 'in-out': 'comes in and goes out' }[p.moving.build] ?? p.moving.build } : false,
    facts: p.facts, factCount: `${p.facts.length} fact${p.facts.length === 1 ? '' : 's'}`,
    files: p.files.map((file) => ({ href: file })),
  };
}
