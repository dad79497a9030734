// Numbers as they are spoken: "two thousand four hundred eighty", "zero point nine five".

const ones = 'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const tens = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const scales: [bigint, string][] = [[10n ** 12n, 'trillion'], [10n ** 9n, 'billion'], [10n ** 6n, 'million'], [1000n, 'thousand']];
const ordinalEnds: [RegExp, string][] = [
  [/one$/, 'first'], [/two$/, 'second'], [/three$/, 'third'], [/five$/, 'fifth'], [/eight$/, 'eighth'], [/nine$/, 'ninth'], [/twelve$/, 'twelfth'], [/y$/, 'ieth'], [/$/, 'th'],
];

/** A whole number in words, US form; `and` asks for the British "one hundred and five". */
export function wholeInWords(n: bigint, and = false): string {
  if (n < 0n) return `minus ${wholeInWords(-n, and)}`;
  if (n < 20n) return ones[Number(n)]!;
  if (n < 100n) {
    const rest = Number(n % 10n);
    return tens[Number(n / 10n)]! + (rest ? `-${ones[rest]}` : '');
  }
  if (n < 1000n) return `${ones[Number(n / 100n)]} hundred${tail(n % 100n, and)}`;
  for (const [scale, name] of scales) {
    if (n < scale) continue;
    const rest = n % scale;
    return `${wholeInWords(n / scale, and)} ${name}${rest && rest < 100n ? tail(rest, and) : rest ? ` ${wholeInWords(rest, and)}` : ''}`;
  }
  return n.toString();
}

function tail(rest: bigint, and: boolean): string {
  return rest ? `${and ? ' and' : ''} ${wholeInWords(rest, and)}` : '';
}

/**
 * A decimal text ("71.50", "-0.9") in words, decimals digit by digit, so that a stated zero is heard. `and` asks for the
 * British form, with its "nought point five". Throws RangeError on anything else.
 */
export function inWords(decimal: string, and = false): string {
  const m = /^([+\-−]?)(\d+)(?:\.(\d+))?$/.exec(decimal);
  if (!m) throw new RangeError(`not a decimal: ${decimal}`);
  const zero = and && m[3] ? 'nought' : 'zero';
  const whole = /^0+$/.test(m[2]!) ? zero : wholeInWords(BigInt(m[2]!), and);
  const after = m[3] ? ` point ${[...m[3]].map((d) => (d === '0' ? zero : ones[Number(d)])).join(' ')}` : '';
  return `${m[1] && m[1] !== '+' ? 'minus ' : ''}${whole}${after}`;
}

/** "first", "twenty-second". */
export function ordinalInWords(n: number): string {
  const words = wholeInWords(BigInt(n));
  for (const [end, form] of ordinalEnds) if (end.test(words)) return words.replace(end, form);
  return words;
}
