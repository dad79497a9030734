// The word that says which way a comparison goes, and the word for the other way, as data.

const pairs = `
up down|upwards downwards|upward downward|above below|over under|ahead behind|more less|extra less|better worse|good bad|best worst|most least
higher lower|highest lowest|warmer cooler|warmest coolest|hotter cooler|hottest coolest|colder warmer|coldest warmest|louder quieter|loudest quietest|noisier quieter|noisiest quietest
beats trails|beat trail|short long|faster slower|fastest slowest|quicker slower|quickest slowest|heavier lighter|heaviest lightest|longer shorter|longest shortest|later earlier|latest earliest|sooner later
bigger smaller|biggest smallest|larger smaller|largest smallest|greater smaller|greatest smallest|fewer more|fewest most|stronger weaker|strongest weakest|thicker thinner|thickest thinnest
brighter dimmer|brightest dimmest|darker brighter|deeper shallower|deepest shallowest|taller shorter|tallest shortest|cheaper dearer|cheapest dearest|thirstier thriftier|thriftier thirstier|steeper shallower|smoother rougher
rise fall|rises falls|rose fell|risen fallen|rising falling|climb drop|climbs drops|climbed dropped|climbing dropping|jump drop|jumps drops|jumped dropped|jumping dropping|grow shrink|grows shrinks|grew shrank|grown shrunk|growing shrinking
increase decrease|increases decreases|increased decreased|increasing decreasing|gain lose|gains loses|gained lost|gaining losing|save cost|saves costs|saved cost|saving costing|raise lower|raises lowers|raised lowered|raising lowering
lift lower|lifts lowers|lifted lowered|warm cool|warms cools|warmed cooled|warming cooling|heat cool|heats cools|heated cooled|lead trail|leads trails|led trailed|leading trailing|improve worsen|improves worsens|improved worsened
sink rise|sinks rises|sank rose|sunk risen|slip rise|slips rises|slipped rose|dip rise|dips rises|dipped rose|decline rise|declines rises|declined rose|reduce raise|reduces raises|reduced raised|cut raise|cuts raises
add shed|adds sheds|added shed|adding shedding|widen narrow|widens narrows|widened narrowed|leap drop|leaps drops|leapt dropped|soar plunge|soars plunges|soared plunged|speeds slows|exceed undercut|exceeds undercuts|exceeded undercut
shed gain|sheds gains|shedding gaining|plunge soar|plunges soars|plummet soar|plummets soar|tumble climb|tumbles climbs|tumbled climbed|gone added|saving premium|reduction increase|drop rise|surplus deficit|beneath above|missing extra
past / short of|beyond / short of|shy of / past|short of / past|ahead of / behind|speed up / slow down|speeds up / slows down|sped up / slowed down|heat up / cool down|heats up / cools down|heated up / cooled down
warm up / cool down|warms up / cools down|warmed up / cooled down|ramps up / winds down|pick up / drop off|picks up / drops off|picked up / dropped off|put on / take off|puts on / takes off|calm down / speed up|calms down / speeds up`;

const others = new Map<string, string>();
for (const pair of pairs.trim().split(/[|\n]/)) {
  const [a, b] = pair.trim().split(pair.includes('/') ? ' / ' : ' ') as [string, string];
  if (!others.has(a)) others.set(a, b);
  if (!others.has(b)) others.set(b, a);
}

/** Of which there are so many, one says "fewer". */
const countable: ReadonlySet<string> = new Set(['frame-rate', 'rotation', 'count', 'score', 'points']);

/** The word for the other way; `of` is the dimension of what is compared. Undefined where there is no such word. */
export function opposite(word: string, of?: string): string | undefined {
  return word === 'more' && of !== undefined && countable.has(of) ? 'fewer' : others.get(word);
}

/** The word nearest before the number, three words off at most, that has an opposite: "climbs to 20,890". */
export function turnedBefore(words: readonly Word[], from: number): { start: number; end: number; put: string } | undefined {
  const word = words.slice(Math.max(0, from - 4), from).findLast((w) => opposite(w.low) !== undefined);
  return word && { start: word.start, end: word.end, put: opposite(word.low)! };
}

/** A word of a sentence, with its offsets. */
interface Word { low: string; start: number; end: number }

/**
 * The word that says which way, and what to say instead: of the phrase by which the comparison was read ("goes up") the first word
 * that has an opposite, where it stands nearest the number. Undefined where there is none.
 */
export function turned(words: readonly Word[], at: { from: number; to: number }, phrase: string, of: string): { start: number; end: number; put: string } | undefined {
  const said = phrase.split(' ');
  let best: { far: number; from: number; to: number; put: string } | undefined;
  for (let i = 0; i + said.length <= words.length; i++) {
    if (!said.every((w, k) => words[i + k]!.low === w)) continue;
    const far = i >= at.to ? i - at.to : at.from - i;
    if (best && far >= best.far) continue;
    // "ahead of", "short of" are turned as one.
    const more = words[i + said.length]?.low === 'of' ? 1 : 0;
    // "heats up" as well, where "up" alone was read.
    const before = i > 0 ? 1 : 0;
    const whole = [[before, 0], [0, more], [0, 0]].map(([b, n]) => ({ from: i - b!, to: i + said.length + n!, put: opposite(words.slice(i - b!, i + said.length + n!).map((w) => w.low).join(' '), of) })).find((x) => x.put !== undefined);
    const one = whole ? -1 : said.findLastIndex((w) => opposite(w, of) !== undefined);
    if (whole) best = { far, from: whole.from, to: whole.to, put: whole.put! };
    else if (one >= 0) best = { far, from: i + one, to: i + one + 1, put: opposite(said[one]!, of)! };
  }
  if (!best) return undefined;
  const put = best.put === 'ahead' && /^(?:the|a|an|its|our|their|what|where)$/.test(words[best.to]?.low ?? '') ? 'ahead of' : best.put;
  return { start: words[best.from]!.start, end: words[best.to - 1]!.end, put };
}
