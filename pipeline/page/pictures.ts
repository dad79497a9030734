// Charts in the page, everything else as links: a page stays one file.
import type { PictureTable } from '../theme/index.js';
import { held } from './held.js';
import { inlineSvg } from './svg.js';

export interface PagePicture {
  name: string;
  kind: string;
  title: string;
  alt: string;
  facts: readonly string[];
  table?: PictureTable;
  svg: string;
  /** Paths of its files from the page on. */
  files: readonly string[];
  data?: string;
}

export interface ChartView {
  id: string;
  /** Unlike any other's: two charts may share a title. */
  label: string;
  title: string;
  alt: string;
  /** What the picture says, to stand after its title; empty where it says no more. */
  words: string;
  svg: string;
  /** Whether it is narrow enough to be read on a phone as it is, and need not be swiped. */
  fits: boolean;
  table: PictureTable | null;
  files: { href: string; name: string }[];
}

/** A chart is a picture with an SVG file of its own; a picture whose SVG may not stand in a page is linked. */
export function pictureViews(pictures: readonly PagePicture[]): { charts: ChartView[]; graphics: ChartView[] } {
  const charts: ChartView[] = [];
  const graphics: ChartView[] = [];
  pictures.forEach((p, i) => {
    const id = `picture-${i + 1}`;
    const svg = p.files.some((f) => f.endsWith('.svg')) ? inlineSvg(p.svg, id) : undefined;
    const files = [...p.files, ...(p.data ? [p.data] : [])].map((href) => ({ href, name: fileWords(href) }));
    (svg ? charts : graphics).push({ id, label: `picture ${i + 1}, ${p.title || p.name}`, title: p.title || p.name, alt: p.alt, words: sentences(withoutTitle(p)), svg: svg ?? '', fits: widthOf(p.svg) <= widestThatFits, table: p.table ? { ...p.table, head: p.table.head.map((h) => h || 'Shown'), rows: p.table.rows.map((row) => row.map(held)) } : null, files });
  });
  return { charts, graphics };
}

/** On a phone of 390 px, whose page is 358 px wide, the smallest type of 44 px is then 12 px: common practice, no published source. */
const widestThatFits = 1280;

function widthOf(svg: string): number {
  return Number(/<svg\b[^>]*?\bviewBox="\S+ \S+ ([\d.]+)/.exec(svg)?.[1] ?? Infinity);
}

/** The words of a graphic begin with its title, for those who hear them alone. */
function withoutTitle({ title, alt }: PagePicture): string {
  return title && alt.startsWith(title) && !/^[\p{L}\p{N}]/u.test(alt.slice(title.length)) ? alt.slice(title.length).replace(/^[\s.:,;]+/, '') : alt;
}

function sentences(text: string): string {
  return text.replace(/^\p{Ll}/u, (c) => c.toUpperCase());
}

/** "PNG 1920 × 1080", "PNG 1080 × 1080, 1 of 2", "SVG", "JSON". */
function fileWords(path: string): string {
  const size = /-(\d+)x(\d+)\.\w+$/.exec(path);
  const part = /-(\d+)-of-(\d+)-\d+x\d+\.\w+$/.exec(path);
  return `${path.split('.').at(-1)!.toUpperCase()}${size ? ` ${size[1]} × ${size[2]}` : ''}${part ? `, ${part[1]} of ${part[2]}` : ''}`;
}
