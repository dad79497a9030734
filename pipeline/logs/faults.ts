// Faults of a log, one finding a kind: a bad column has a hundred thousand bad cells, and nobody reads that many lines.
import type { Finding, Place, Severity } from '../places/index.js';

export class Faults {
  readonly #kinds = new Map<string, { finding: Finding; more: number }>();
  readonly #file: string;

  constructor(file: string) {
    this.#file = file;
  }

  /** `kind` tells apart what is to be told apart; `place` is asked for once. */
  add(kind: string, code: string, severity: Severity, place: () => Place, message: string, more: Partial<Finding> = {}): void {
    const known = this.#kinds.get(kind);
    if (known) known.more++;
    else this.#kinds.set(kind, { more: 0, finding: { code, severity, place: place(), message: message.charAt(0).toUpperCase() + message.slice(1), subject: this.#file, ...more } });
  }

  has(code: string): boolean {
    return [...this.#kinds.values()].some((k) => k.finding.code === code);
  }

  drop(kind: string): void {
    this.#kinds.delete(kind);
  }

  list(): Finding[] {
    return [...this.#kinds.values()].map(({ finding, more }) => (more ? { ...finding, message: `${finding.message} (and on ${more} more line${more === 1 ? '' : 's'})` } : finding));
  }
}
