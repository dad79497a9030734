// The sheets of one request: laid out for every stage, in as many parts as its rows need there.
import type { Sheet } from './draw.js';
import { template } from './files/index.js';
import type { Finding } from './places/index.js';
import type { Facts, PictureRequest } from './facts/index.js';
import type { Prepared, Size, Stage } from './theme/index.js';

export interface Staged {
  stage: Stage;
  sizes: Size[];
}

/** A picture, or one of the pictures that a request with many rows becomes; the stages that need other parts have pictures of their own. */
export interface Part {
  request: PictureRequest;
  sheets: Sheet[];
  /** Name of the picture of which this is another division, for a stage with less room. */
  divides?: string;
}

type Charts = typeof import('./charts/index.js');
type Graphics = typeof import('./graphics/index.js');

export class Layouts {
  readonly #facts: Facts;
  readonly #stages: readonly Staged[];
  readonly #charts: Charts;
  readonly #graphics: Graphics;

  constructor(facts: Facts, stages: readonly Staged[], charts: Charts, graphics: Graphics) {
    this.#facts = facts;
    this.#stages = stages;
    this.#charts = charts;
    this.#graphics = graphics;
  }

  isChart(kind: string): boolean {
    return this.#charts.chartKinds.includes(kind);
  }

  /** Without sheets and findings where there is nothing to show. What is wrong on the first stage is told of it alone. */
  of(request: PictureRequest): { parts: Part[]; findings: Finding[] } {
    const parts = new Map<string, Part>();
    const findings: Finding[] = [];
    let usual: number | undefined;
    let main = '';
    for (const [i, { stage, sizes }] of this.#stages.entries()) {
      const made = this.#inParts(request, stage, usual);
      if (i > 0 && made.findings.length > 0) {
        findings.push(...made.findings.map((f) => this.#leftOut(f, sizes)));
        continue;
      }
      findings.push(...made.findings);
      if (made.prepared.length === 0) break;
      usual ??= made.prepared.length;
      main ||= made.prepared[0]!.value.name;
      made.prepared.forEach(({ request: asked, value }) => {
        const part = parts.get(asked.name) ?? { request: asked, sheets: [], ...(made.prepared.length !== usual && { divides: main }) };
        part.sheets.push({ stage: stage.id, prepared: value, sizes });
        parts.set(asked.name, part);
      });
    }
    return { parts: [...parts.values()], findings };
  }

  /** As few parts as have room; none, and why, where even single rows have none. */
  #inParts(request: PictureRequest, stage: Stage, usual: number | undefined): { prepared: { request: PictureRequest; value: Prepared }[]; findings: Finding[] } {
    const rows = this.isChart(request.kind) ? this.#charts.rowsOf(request, this.#facts) : this.#graphics.rowsOf(request, this.#facts);
    let least: Finding[] | undefined;
    for (let count = this.#charts.partsOf(rows); ; count++) {
      const asked = this.#charts.inParts(request, rows, count, usual);
      const made = asked.map((r) => ({ request: r, ...(this.isChart(r.kind) ? this.#charts.prepareChart(r, this.#facts, stage) : this.#graphics.prepareGraphic(r, this.#facts, stage, template)) }));
      const findings = made.flatMap((m) => m.findings);
      if (findings.every((f) => f.severity !== 'error')) return { prepared: made.map(({ request: r, value }) => ({ request: r, value: value! })), findings };
      least ??= findings;
      if (count >= rows || !findings.some((f) => f.code === 'too-many-rows')) return { prepared: [], findings: count >= rows ? least : findings };
    }
  }

  /** What nobody asked for by name, a size or a picture, may be left out; the rest is made. */
  #leftOut(finding: Finding, sizes: readonly Size[]): Finding {
    const names = sizes.map((s) => `${s.width}×${s.height}`).join(', ');
    const { sizes: asked, pictures } = this.#facts.about;
    return asked ? { ...finding, message: `${finding.message} (${names})` } : { ...finding, severity: pictures.length > 0 ? 'warning' : 'note', message: `${finding.message}; until then there is none of ${names}` };
  }
}
