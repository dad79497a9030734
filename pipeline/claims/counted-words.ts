// Nouns of what is counted, as data: what each stands for in a record, and whether it can hardly mean anything else. A person extends these rows.
export type Counted = 'setups' | 'settings' | 'workloads' | 'runs' | 'combinations';

export const countedNouns: readonly [Counted, boolean, RegExp][] = [
  ['settings', true, /^(?:settings?|modes?|profiles?|configurations?|configs?|presets?|curves?)$/],
  ['settings', false, /^(?:speeds?|steps?|levels?|limits?|loads?)$/],
  ['workloads', true, /^(?:workloads?|scenes?|games?|benchmarks?|renders?|titles?)$/],
  ['workloads', false, /^(?:loads?|tests?|steps?|levels?)$/],
  ['runs', true, /^(?:runs?|passes|repeats|repetitions)$/],
  ['runs', true, /^(?:goes|tries|sittings)$/],
  ['combinations', true, /^(?:combinations?|combos?|pairings?)$/],
  ['setups', true, /^(?:setups?|contenders?|contestants?|competitors?|challengers?|rivals|participants?|candidates?|entrants?|laptops?|coolers?|supplies|cards?|loops?|machines?|heatsinks?|notebooks?|phones?|routers?|printers?|headsets?|keyboards?|monitors?|enclosures?|chassis|desktops?|towers?|pastes?|tablets?|chargers?|consoles?|handhelds|speakers?|cameras?|projectors?|televisions?|earbuds|headphones|heaters?|kettles?|lamps?|bulbs?|vacuums?|drones?|watches|bikes?|scooters?|amplifiers?|scanners?|blenders?|ovens?|dehumidifiers?|purifiers?)$/],
  ['setups', false, /^(?:arrangements?|ways?|versions?|variants?|results?|layouts?)$/],
  ['settings', false, /^(?:arrangements?|ways?|versions?|variants?|layouts?|caps?)$/],
  ['combinations', false, /^(?:arrangements?|ways?|results?|layouts?)$/],
  ['setups', false, /^(?:fans?|pumps?|cases?|drives?|boards?|chips?|pads?|kits?|models?|products?|units?|boxes|samples?|radiators?|sticks?|modules?|designs?|systems?|options?|ones?|cpus?|processors?|ssds?|blocks?|brands?|banks|packs|bricks|batteries|hubs|docks|cables|adapters|adaptors|stands|sleeves|bottles|flasks|gadgets|devices|things|rivals|competitors|opponents)$/],
];

/** Nouns for whatever was varied. */
export const plainCount = /^(?:arrangements|ways|versions|variants|results|layouts)$/;

/** Words that end the noun phrase after a number. */
export const phraseEnds = /^(?:of|and|or|to|in|on|at|with|is|are|was|were|that|that's|it's|which|than|under|for|by|as|over|from|when|after|before|then|while|so|per|behind|above|below|idle|the|an?|my|our|your|its|their|his|her|it|they|we|you|i)$/;
