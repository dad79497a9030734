// What part a phase plays (idle, load, start, end, limit …), from the words of its id and the words of a sentence. Data.

export type Role = 'idle' | 'load' | 'start' | 'end' | 'limit' | 'target' | 'rated' | 'offset';

/** Roles whose readings are set, not measured. */
export const constantRoles: readonly Role[] = ['limit', 'target', 'rated', 'offset'];

const inIds: [Role, RegExp][] = [
  // The time until something happens is measured, whatever it is that happens.
  ['load', /(?:^|-)(?:until|till|to|before|first)-(?:\w+-)?(?:throttle|limit|cap)(?:-|$)/],
  ['limit', /(?:^|-)(?:limit|cap|max|ceiling|throttle|threshold)(?:-|$)/],
  ['target', /(?:^|-)(?:target|setpoint|goal|set)(?:-|$)/],
  ['rated', /(?:^|-)(?:rated|rating|nominal|label|spec|claimed|advertised|nameplate)(?:-|$)/],
  ['offset', /(?:^|-)offset(?:-|$)/],
  ['idle', /(?:^|-)(?:idle|rest|standby|desktop)(?:-|$)/],
  ['start', /(?:^|-)(?:first|start|initial|begin|opening|cold|early|before|burst)(?:-|$)/],
  ['end', /(?:^|-)(?:after|end|last|final|late|steady|settled|warm|sustained|soaked)(?:-|$)/],
];

export function roleOf(phase: string): Role {
  return inIds.find(([, re]) => re.test(phase))?.[0] ?? 'load';
}

/** Words of a sentence that point at a role. `firm` ones say it outright; the others only lean. */
export const roleWords = new Map<string, { role: Role; firm: boolean }>();
const rows: [Role, boolean, string][] = [
  ['limit', true, 'limit|limits|cap|capped|ceiling|allowed|allowance|allows|permitted|throttles at|throttle point|throttling point|where it throttles|where throttling starts|where it starts throttling|where it starts to throttle|where it cuts out|where it shuts down|where it trips|maximum allowed|threshold|budget|throttle set at|throttle is set at|throttling at|throttles itself at|shuts down at|shuts off at|shuts itself off at|cuts out at|gives up at|trips at|what it\'s offered|what it is offered|what they\'re offered|what it\'s given|what it is given|what it\'s granted|what it\'s entitled to|what it may have|what it may draw|what it may take|what it\'s permitted|permits|tolerates'],
  ['limit', false, 'maximum|limited|built for|made for|designed for|meant to give|good for'],
  ['target', true, 'target|targets|goal|setpoint|set point'],
  ['target', false, 'ask for|asked for|asks for|aim|aimed|set to|held at|turned down until|asking for|to put out|to deliver|to supply|to give out|to push out|to feed out|delivering|putting out'],
  ['target', true, 'draw the line|draws the line|drew the line|draws a line|red line'],
  ['rated', false, 'where it says|according to the box|read the box|reading the box|believe the box|ask the box|on the listing|listing says|website says|page says|on the tin|says on the tin|leaflet says'],
  ['rated', true, 'rated|rating|on the label|label|nominal|nameplate|on the box|advertised|promised|promises|claims|claimed|spec|data sheet|datasheet|on paper|sticker|on the sticker|box says|says on the box|on the packaging|brochure|maker says|manufacturer says'],
  ['idle', true, 'idle|idles|idled|idling|at rest|doing nothing|doing absolutely nothing|does nothing|doing nothing at all|sitting there|sat there|standby|at the desktop|on the desktop'],
  ['load', true, 'under load|loaded|at load|under full load|in load'],
  ['start', true, 'opens|opened|started with|starts with|started from|to begin with|to start with|at the start|in the beginning|at the beginning|started out|starts out|starts at|started at|starting point|initially|opening|from the start|began|begins'],
  ['end', true, 'at the end|in the end|in the long run|by the end|ends up|ended up|ends at|finishes|finished|ends on'],
  ['end', false, 'settles|settled|settle|ends|later|levels off|leveled off|levelled off|finally|warm|steady|once warm|later on|holding|sustained'],
];
for (const [role, firm, text] of rows) for (const w of text.split('|')) roleWords.set(w, { role, firm });
