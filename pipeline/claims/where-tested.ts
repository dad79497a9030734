// "The cabinet settles at 41.2", where the cabinet is what everything was tested in and the record has just its limit: the thing under test is spoken of.
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

const states = /^(?:is|was|settles?|settled|sits?|sat|runs?|ran|reach(?:es|ed)?|climbs?|climbed|gets?|got|ends?|ended|stays?|stayed|levels|levelled|rises?|rose|falls?|fell|drops?|dropped|stands?|stood|makes?|made|reads?|shows?|showed|hits?|warms?|warmed|heats?|heated|cools?|cooled|hovers?|hovered|comes?|came)$/;
const marks = /^(?:limits?|lines?|marks?|rules?|targets?|ceilings?|caps?|plans?|thresholds?|standards?|budgets?|goals?|norms?|bars?|allowance|maximum|minimum)$/;

/** A name of what holds limits, which is said to have come to the figure, and is not called a mark. */
export function whereTested(g: Grid, p: Parsed, h: Hit, index: number): boolean {
  const { mention } = p.said[index]!;
  return g.holders.has(h.value) && h.to < mention.from && !mention.hedge && !p.low.slice(h.from, h.to).some((w) => marks.test(w)) && states.test(p.low[h.to] ?? '') && p.low[h.to + 1] !== 'to';
}
