// Comparatives and superlatives with what they compare and which way, as data.
import type { Dimension } from '../quantities/index.js';

/** `up`: more of the measure; `down`: less; `better`, `worse`: by the measure's polarity; `lost`: less of a good thing or more of a bad one; `gained`: more of a good thing, or better by that much. */
export type Way = 'up' | 'down' | 'better' | 'worse' | 'lost' | 'gained' | 'apart';

export interface Comparison {
  way: Way;
  /** The dimensions that the word speaks of; none where it fits any. */
  of: readonly Dimension[];
}

const heat: Dimension[] = ['temperature', 'temperature-difference'];
const fast: Dimension[] = ['frame-rate', 'frequency', 'rotation', 'data-rate', 'flow', 'air-flow', 'duration', 'score'];
const rows: [stem: string, Way, readonly Dimension[]][] = [
  ['hot|hotter|hottest', 'up', heat], ['warm|warmer|warmest', 'up', heat], ['cool|cooler|coolest', 'down', heat], ['cold|colder|coldest', 'down', heat], ['chilly|chillier|chilliest', 'down', heat],
  ['loud|louder|loudest', 'up', ['sound-level']], ['noisy|noisier|noisiest', 'up', ['sound-level']], ['quiet|quieter|quietest', 'down', ['sound-level']], ['silent|-|-', 'down', ['sound-level']],
  ['heavy|heavier|heaviest', 'up', ['mass']], ['light|lighter|lightest', 'down', ['mass']],
  ['thirsty|thirstier|thirstiest', 'up', ['power', 'energy']], ['hungry|hungrier|hungriest', 'up', ['power', 'energy']],
  ['efficient|-|-', 'up', ['share', 'compound']],
  ['long|longer|longest', 'up', ['duration', 'length']], ['late|later|latest', 'up', ['duration']], ['early|earlier|earliest', 'down', ['duration']], ['soon|sooner|soonest', 'down', ['duration']],
  ['short|shorter|shortest', 'down', ['duration', 'length']],
  ['fast|faster|fastest', 'better', fast], ['quick|quicker|quickest', 'better', fast], ['slow|slower|slowest', 'worse', fast], ['smooth|smoother|smoothest', 'better', ['frame-rate']],
  ['high|higher|highest', 'up', []], ['low|lower|lowest', 'down', []], ['large|larger|largest', 'up', []], ['big|bigger|biggest', 'up', []], ['great|greater|greatest', 'up', []],
  ['small|smaller|smallest', 'down', []], ['few|fewer|fewest', 'down', []], ['-|more|most', 'up', []], ['-|less|least', 'down', []], ['steep|steeper|steepest', 'up', []],
  ['good|better|best', 'better', []], ['bad|worse|worst', 'worse', []], ['poor|poorer|poorest', 'worse', []], ['strong|stronger|strongest', 'better', []], ['weak|weaker|weakest', 'worse', []],
  ['cheap|cheaper|cheapest', 'down', ['money']], ['expensive|dearer|dearest', 'up', ['money']], ['pricey|pricier|priciest', 'up', ['money']],
  ['bright|brighter|brightest', 'up', ['illuminance']], ['dim|dimmer|dimmest', 'down', ['illuminance']], ['dark|darker|darkest', 'down', ['illuminance']],
  ['deep|deeper|deepest', 'up', []], ['shallow|shallower|shallowest', 'down', []], ['steady|steadier|steadiest', 'down', []],
  ['thick|thicker|thickest', 'up', ['length']], ['thin|thinner|thinnest', 'down', ['length']], ['tall|taller|tallest', 'up', ['length']],
];

export const comparatives = new Map<string, Comparison>();
export const superlatives = new Map<string, Comparison>();
for (const [stem, way, of] of rows) {
  const [, more, most] = stem.split('|');
  if (more !== '-') comparatives.set(more!, { way, of });
  if (most !== '-') superlatives.set(most!, { way, of });
}
/** Adjectives that are compared with "more", "less", "most", "least". */
export const gradables = new Map<string, Comparison>(rows.map(([stem, way, of]) => [stem.split('|')[0]!, { way, of }]));
for (const w of ['top', 'lead', 'leading', 'winning']) superlatives.set(w, { way: 'better', of: [] });
comparatives.set('extra', { way: 'up', of: [] });
comparatives.set('additional', { way: 'up', of: [] });
