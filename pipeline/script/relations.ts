// Words that say how a number relates to others, as data: verbs and nouns of change, words that open the comparison.
import type { Way } from './comparisons.js';

/** Verbs of change: with "by" or straight before the number they give its size; with "to" the number is where it ends. */
const changes: [Way, string][] = [
  ['up', 'rise|rises|rose|risen|rising|climb|climbs|climbed|climbing|jump|jumps|jumped|jumping|grow|grows|grew|grown|growing|increase|increases|increased|increasing|go up|goes up|went up|gone up|going up|add|adds|added|adding|heat|heats|heated|warm|warms|warmed|warming|exceed|exceeds|exceeded|exceeding|top|tops|raise|raises|raised|raising|lift|lifts|lifted|lifting|put on|puts on|pick up|picks up|picked up|swell|swells|widen|widens|widened|soar|soars|soared|shoot up|shot up|ramps up|ramp up|speeds up|creeps up|creep up|crept up|ticks up|tick up|ticked up|edges up|nudges up|bumps up|bump up|bumped up|leap|leaps|leapt|leaped|leaping|surge|surges|surged|surging|rocket|rockets|rocketed|spike|spikes|spiked|creeping up|inch up|inches up|inched up|boosts|boost|boosted|up'],
  ['down', 'fall|falls|fell|fallen|falling|drop|drops|dropped|dropping|sink|sinks|sank|sunk|slip|slips|slipped|slipping|shrink|shrinks|shrank|shrunk|decrease|decreases|decreased|decreasing|decline|declines|declined|lower|lowers|lowered|lowering|cut|cuts|cutting|save|saves|saved|saving|shed|sheds|shedding|reduce|reduces|reduced|reducing|go down|goes down|went down|gone down|come down|comes down|came down|gone|dips|dip|dipped|dipping|cool|cools|cooled|cooling|sag|sags|sagged|sagging|down|shave|shaves|shaved|shaving|knock|knocks|knocked|trim|trims|trimmed|take off|takes off|took off|narrow|narrows|narrowed|close|closes|closed|tumble|tumbles|tumbled|plunge|plunges|plunged|plunging|plummet|plummets|plummeted|plummeting|dive|dives|dived|dwindle|dwindles|dwindled|recede|recedes|receded|come up short|comes up short|came up short|coming up short|fall short|falls short|fell short|fallen short|falling short|stop short|stops short|stopped short|die down|dies down|died down|inches down|inched down|slows|slow|slowed|slide|slides|slid|ease|eases|eased|settle down|ticks down|tick down|ticked down|edges down'],
  ['lost', 'lose|loses|lost|losing|loss|give up|gives up|gave up|given up|giving up|sacrifice|sacrifices|sacrificed'],
  ['gained', 'gain|gains|gained|gaining'],
  ['better', 'beat|beats|beaten|beating|win|wins|won|winning|lead|leads|led|leading|ahead|outperform|outperforms|outperformed|improve|improves|improved|improving|edge out|edges out|edged out'],
  ['worse', 'worsen|worsens|worsened|worsening|deteriorate|deteriorates|deteriorated|regress|regresses|regressed|behind|trail|trails|trailed|trailing|lag|lags|lagged|lagging|miss|misses|missed|missing'],
  ['apart', 'cost|costs|costing|brings us|brings you|brought us|brought you|bring you|bring us|nets us|nets you|netted us|earns us|earns you|earned us|pay|pays|paid|paying|buy|buys|bought|buying|give back|gives back|gave back|given back|differ|differs|differed|differing|separate|separates|separated|change|changes|changed|changing|move|moves|moved|moving|swing|swings|swung|worth|apart|span|spans|spanning|vary|varies|varied|leaves|left|leave|leaving'],
];
/** Nouns of change: "a rise of 29 degrees", "the gap is 4", "Sag: 40 millivolts". */
const nouns: [Way, string][] = [
  ['up', 'rise|increase|jump|climb|bump|boost|premium|uplift|step up|step from|jump from|climb from|hike|surplus|excess|growth'],
  ['down', 'drop|fall|decrease|loss|decline|reduction|saving|savings|dip|sag|cut|droop|deficit'],
  ['gained', 'gain'],
  ['apart', 'difference|gap|spread|delta|margin|swing|distance|headroom|change|lead|penalty|advantage|disadvantage|benefit|improvement|edge|range|heat|span|cushion|slack|variation'],
];
/** Words after the number that make it a difference: "1.3 behind the leader", "4 degrees below its limit". */
const trailers: [Way, string][] = [
  ['up', 'up|above|over|on top|past|beyond|extra'],
  ['up', 'gained|added|more'],
  ['down', 'saved|shaved|shed|missing'],
  ['down', 'down|below|under|inside|short of|short|shy of|gone|off|lost|beneath|away|fewer'],
  ['better', 'ahead|clear of|in front|to the good'],
  ['worse', 'behind|adrift|back|off the pace|off the top|off the lead|off the leader|off the best|off the winner|off first'],
  ['apart', 'the wrong side|on the wrong side|the right side|on the right side|the good side|on the good side|the bad side|on the bad side'],
  ['apart', 'too many|too much|too high|too hot|too warm|too loud|too low|too slow|too few|too little|too long|too heavy'],
  ['apart', 'apart|to go|between them|between the two|between these two|of headroom|to spare|spare|to play with|of breathing room|from|of difference|of a difference|in it|difference|of room|of margin|in reserve|in hand|left|of slack|have gone missing|has gone missing|went missing|go missing|are missing|is missing|gone missing|of leeway|of clearance'],
];

export interface Phrase<T> {
  words: readonly string[];
  value: T;
}

function phrases(rows: readonly [Way, string][]): Map<string, Phrase<Way>[]> {
  const out = new Map<string, Phrase<Way>[]>();
  for (const [way, text] of rows) {
    for (const phrase of text.split('|')) {
      const words = phrase.split(' ');
      const list = out.get(words[0]!) ?? [];
      list.push({ words, value: way });
      list.sort((a, b) => b.words.length - a.words.length);
      out.set(words[0]!, list);
    }
  }
  return out;
}

export const changeVerbs = phrases(changes);
export const changeNouns = phrases(nouns);
export const changeTrailers = phrases(trailers);

/** Verbs that take away what is said to be a part of something: "takes 19 percent of your frames". */
export const takingVerbs: ReadonlySet<string> = new Set('take takes took taken taking eat eats ate cost costs rob robs robbed swallow swallows shave shaves lose loses lost'.split(' '));

/** Words that open what is compared with. */
export const baseOpeners: readonly string[] = [
  'than', 'since', 'compared with', 'compared to', 'against', 'versus', 'vs', 'relative to', 'behind', 'ahead of', 'over', 'above', 'past', 'beyond', 'under', 'below', 'beneath', 'short of', 'shy of', 'inside', 'within', 'outside', 'from', 'off', 'beats', 'beat', 'trails', 'trailing', 'misses', 'leads', 'clear of', 'on top of', 'next to', 'in front of', 'away from', 'up on', 'down on', 'better of', 'beating', 'leading', 'trail', 'outperforms',
];

/** The longest phrase of a table that starts at word `i` of `low`. */
export function phraseAt<T>(table: ReadonlyMap<string, readonly Phrase<T>[]>, low: readonly string[], i: number): Phrase<T> | undefined {
  const list = table.get(low[i] ?? '');
  return list?.find((p) => p.words.every((w, k) => low[i + k] === w));
}
