// What a kind of chart gives: its words and figures, and a Vega-Lite spec for the body.
import type { Facts, PictureRequest } from '../facts/index.js';
import type { Frame, Heading, PictureTable, Stage } from '../theme/index.js';
import type { Spec } from './spec.js';

/** A request, or a stretch of its rows where there are too many for one picture. */
export interface ChartRequest extends PictureRequest {
  /** Rows shown, from 0, the end exclusive; scale and ranks are those of all rows. */
  slice?: { from: number; to: number; part: number; parts: number };
}

export interface Sketch {
  heading: Heading;
  alt: string;
  table: PictureTable;
  /** Ids of the facts shown. */
  facts: string[];
  spec: Spec;
  /** Words and figures inside the body, to be checked for characters that cannot be shown. */
  labels: string[];
}

export interface Chart {
  kind: string;
  /** One line for the documents. */
  says: string;
  /** How many rows it would show, for splitting; 1 where it has none. */
  rows(request: ChartRequest, facts: Facts): number;
  sketch(request: ChartRequest, facts: Facts, work: Workbench): Sketch | undefined;
}

/** What a chart is handed to work with. */
export interface Workbench {
  /** What it is laid out for: its size, the area for text, and the theme's colours and type as they are there. */
  stage: Stage;
  /** Title, subtitle, legend and foot set; what is left between them is the body. */
  frame(heading: Heading): Frame;
  /** Leaves an error, at the name that it is about or at the request. */
  complain(code: string, message: string, subject?: string): undefined;
}
