// One cell of a log to a number, fast and strict: digits, one decimal sign, an exponent; nothing else is a number.

export class NumberCells {
  /** Decimals written in the last number read. */
  decimals = 0;
  readonly #sign: number;

  constructor(decimalComma: boolean) {
    this.#sign = decimalComma ? 44 : 46;
  }

  /** NaN for anything that is not a plain finite number; a true minus sign counts as one. */
  read(cell: string): number {
    let point = -1;
    let exponent = -1;
    let digits = 0;
    for (let i = 0; i < cell.length; i++) {
      const c = cell.charCodeAt(i);
      if (c >= 48 && c <= 57) digits++;
      else if (c === this.#sign && point < 0 && exponent < 0) point = i;
      else if ((c === 101 || c === 69) && exponent < 0 && digits) exponent = i;
      else if (!((c === 45 || c === 43 || c === 0x2212) && (i === 0 || i === exponent + 1))) return this.#spaced(cell);
    }
    if (!digits || exponent === cell.length - 1) return NaN;
    const end = exponent < 0 ? cell.length : exponent;
    this.decimals = point < 0 ? 0 : end - point - 1;
    if (exponent >= 0) this.decimals = Math.max(0, this.decimals - Number(cell.slice(exponent + 1)));
    const plain = (this.#sign === 44 && point >= 0) || cell.charCodeAt(0) === 0x2212 ? cell.replace(',', '.').replace('\u2212', '-') : cell;
    const value = Number(plain);
    return Number.isFinite(value) ? value : NaN;
  }

  #spaced(cell: string): number {
    const trimmed = cell.trim();
    return trimmed.length < cell.length && trimmed ? this.read(trimmed) : NaN;
  }
}

/** Seconds of a clock time "15:04:05.25" or "15:04"; undefined for anything else. */
export function clockSeconds(text: string): number | undefined {
  const m = /^(\d{1,3}):([0-5]\d)(?::([0-5]\d(?:[.,]\d+)?))?$/.exec(text.trim());
  return m ? Number(m[1]) * 3600 + Number(m[2]) * 60 + Number((m[3] ?? '0').replace(',', '.')) : undefined;
}

/** Seconds since 1970 of an ISO 8601 date and time; one without a zone is taken as UTC, so that no machine's zone matters. */
export function isoSeconds(text: string): number | undefined {
  const m = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):([0-5]\d)(?::([0-5]\d)([.,]\d+)?)?\s*(Z|[+-]\d\d:?\d\d)?$/.exec(text.trim());
  if (!m) return undefined;
  const ms = Date.UTC(Number(m[1]), Number(m[2]) - 1, Number(m[3]), Number(m[4]), Number(m[5]), Number(m[6] ?? 0));
  const day = new Date(ms);
  if (day.getUTCMonth() !== Number(m[2]) - 1 || Number(m[4]) > 23) return undefined;
  const zone = m[8] && m[8] !== 'Z' ? (m[8].startsWith('-') ? -1 : 1) * (Number(m[8].slice(1, 3)) * 3600 + Number(m[8].slice(-2)) * 60) : 0;
  return ms / 1000 + Number((m[7] ?? '0').replace(',', '.')) - zone;
}
