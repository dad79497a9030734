// A number and its unit stay on one line, however narrow the page.

/** "300 W", "39.4 dB(A)": a no-break space before what may be a unit. */
export function held(text: string): string {
  return text.replace(/(\d) (?=(?:%|°|[\p{L}µ][\p{L}()/·]{0,6}(?![\p{L}()/·])))/gu, '$1\u00a0');
}
