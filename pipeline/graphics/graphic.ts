// What a kind of graphic gives: a model for its template, every line of text placed and measured.
import type { FactKind, Facts, PictureRequest } from '../facts/index.js';
import type { Line, PictureTable, Rect } from '../theme/index.js';
import type { Composer } from './compose.js';

export interface Layout {
  title: string;
  alt: string;
  /** Ids of the facts shown. */
  facts: string[];
  table?: PictureTable;
  /** Behind all of it; `lowerLeft` in compose.ts makes it for what stands in the lower left corner. */
  panel: Rect;
  /** Handed to templates/graphics/KIND.svg.hbs; every text in it is a Line. */
  model: Record<string, unknown>;
  /** The same lines, to be checked. */
  lines: Line[];
}

/** A request, or a stretch of its rows where there are too many for one picture; as with charts. */
export interface GraphicRequest extends PictureRequest {
  /** Rows shown, from 0, the end exclusive; bars and places are those of all rows. */
  slice?: { from: number; to: number; part: number; parts: number };
}

/** What an entry of the record's `pictures:` may and must give to a kind; all else would be passed over, and is a finding. */
export interface Takes {
  /** How many fact ids, and of which kinds where not any will do. */
  facts?: { least: number; most: number; kinds?: readonly FactKind[] };
  /** What they are for. */
  title?: string;
  text?: string;
  setups?: boolean;
  settings?: boolean;
  /** Measure, part, phase and workload, to choose readings by. */
  readings?: boolean;
}

export interface Graphic {
  kind: string;
  /** One line for the documents. */
  says: string;
  takes: Takes;
  /** How many rows it would show, of a kind that can be split. */
  rows?(request: PictureRequest, facts: Facts): number;
  compose(request: GraphicRequest, facts: Facts, sheet: Composer): Layout | undefined;
}
