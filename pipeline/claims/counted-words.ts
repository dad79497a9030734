// Nouns of what is counted, as data: what each stands for in a record, and whether it can hardly mean anything else. A person extends these rows.
import { WordClass } from '../script/index.js';

export type Counted = 'setups' | 'settings' | 'workloads' | 'runs' | 'combinations';

export const countedNouns: readonly [Counted, boolean, WordClass][] = [
  ['settings', true, new WordClass(/^(?:settings?|modes?|profiles?|configurations?|configs?|presets?|curves?)$/)],
  ['settings', false, new WordClass(/^(?:speeds?|steps?|levels?|limits?|loads?)$/)],
  ['workloads', true, new WordClass(/^(?:workloads?|scenes?|games?|benchmarks?|renders?|titles?)$/)],
  ['workloads', false, new WordClass(/^(?:loads?|tests?|steps?|levels?)$/)],
  ['runs', true, new WordClass(/^(?:runs?|passes|repeats|repetitions)$/)],
  ['runs', true, new WordClass(/^(?:goes|tries|sittings)$/)],
  ['combinations', true, new WordClass(/^(?:combinations?|combos?|pairings?)$/)],
  ['setups', true, new WordClass(/^(?:setups?|contenders?|contestants?|competitors?|challengers?|rivals|participants?|candidates?|entrants?|laptops?|coolers?|supplies|cards?|loops?|machines?|heatsinks?|notebooks?|phones?|routers?|printers?|headsets?|keyboards?|monitors?|enclosures?|chassis|desktops?|towers?|pastes?|tablets?|chargers?|consoles?|handhelds|speakers?|cameras?|projectors?|televisions?|earbuds|headphones|heaters?|kettles?|lamps?|bulbs?|vacuums?|drones?|watches|bikes?|scooters?|amplifiers?|scanners?|blenders?|ovens?|dehumidifiers?|purifiers?)$/)],
  ['setups', false, new WordClass(/^(?:arrangements?|ways?|versions?|variants?|results?|layouts?)$/)],
  ['settings', false, new WordClass(/^(?:arrangements?|ways?|versions?|variants?|layouts?|caps?)$/)],
  ['combinations', false, new WordClass(/^(?:arrangements?|ways?|results?|layouts?)$/)],
  ['setups', false, new WordClass(/^(?:fans?|pumps?|cases?|drives?|boards?|chips?|pads?|kits?|models?|products?|units?|boxes|samples?|radiators?|sticks?|modules?|designs?|systems?|options?|ones?|cpus?|processors?|ssds?|blocks?|brands?|banks|packs|bricks|batteries|hubs|docks|cables|adapters|adaptors|stands|sleeves|bottles|flasks|gadgets|devices|things|rivals|competitors|opponents)$/)],
];

/** Nouns for whatever was varied. */
export const plainCount = new WordClass(/^(?:arrangements|ways|versions|variants|results|layouts)$/);

/** Words that end the noun phrase after a number. */
export const phraseEnds = new WordClass(/^(?:of|and|or|to|in|on|at|with|is|are|was|were|that|that's|it's|which|than|under|for|by|as|over|from|when|after|before|then|while|so|per|behind|above|below|idle|the|an?|my|our|your|its|their|his|her|it|they|we|you|i)$/);
