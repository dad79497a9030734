// The rooms of pipeline/: which rooms and which packages each may import. Rooms stand in the order of the way of the data.
export interface RoomRule {
  duty: string;
  rooms: string[];
  packages: string[];
}

export const rooms: Record<string, RoomRule> = {
  places: { duty: 'file, line, column, span; the finding and its printing', rooms: [], packages: ['node:util', 'sarif'] },
  quantities: { duty: 'units, exact decimals, rounding, shown and spoken number forms', rooms: [], packages: [] },
  statistics: { duty: 'means, quantiles, Student’s t, outliers, levels, fits: pure numbers', rooms: [], packages: [] },
  theme: { duty: 'colours, sizes, type, spacing, as data; text measuring and outlining', rooms: [], packages: ['fontkit', 'node:fs', 'node:module', 'node:path', 'node:url'] },
  files: { duty: 'all that touches the disk: read, hash, write whole, manifest, lock, cache', rooms: ['places'], packages: ['node:fs', 'node:path', 'node:crypto', 'node:os', 'node:process', 'node:url', 'node:module', 'node:child_process'] },
  engine: { duty: 'a database engine that is installed beside the program, asked in a thread of its own', rooms: [], packages: ['node:module', 'node:worker_threads'] },
  logs: { duty: 'sensor and frame logs to windows and per-run values', rooms: ['places', 'quantities', 'statistics', 'engine'], packages: ['node:buffer'] },
  records: { duty: 'YAML and tables to a typed episode and a theme, every value with its place', rooms: ['places', 'quantities', 'theme', 'logs'], packages: ['yaml'] },
  facts: { duty: 'all that is derived, with formula, inputs, spread; hands on what the record says about the episode', rooms: ['places', 'quantities', 'statistics', 'records'], packages: [] },
  slips: { duty: 'what kind of mistake turns this value into that one', rooms: ['quantities', 'facts'], packages: [] },
  checks: { duty: 'one file a check, over records and facts', rooms: ['places', 'quantities', 'statistics', 'records', 'facts', 'slips'], packages: [] },
  script: { duty: 'narration text to numeric mentions with their words; knows no facts', rooms: ['places', 'quantities'], packages: [] },
  wording: { duty: 'whether a number is a fair way to tell a fact, and the right words in the writer’s own form', rooms: ['quantities', 'facts', 'slips', 'script'], packages: [] },
  claims: { duty: 'ties mentions to facts and gives verdicts', rooms: ['places', 'quantities', 'facts', 'slips', 'script', 'wording'], packages: [] },
  cautions: { duty: 'which cautions the record calls for', rooms: ['quantities', 'facts'], packages: [] },
  story: { duty: 'what is worth telling in an episode, why, and in which order it is told', rooms: ['quantities', 'facts'], packages: [] },
  charts: { duty: 'one file a chart: facts to a Vega-Lite spec to SVG', rooms: ['places', 'quantities', 'theme', 'facts', 'story'], packages: ['vega', 'vega-lite', 'vega-scenegraph'] },
  graphics: { duty: 'one file a graphic: facts and a template to SVG to pixels', rooms: ['places', 'quantities', 'theme', 'facts', 'story', 'cautions'], packages: ['handlebars', 'sharp'] },
  motion: { duty: 'a finished picture to its frames, and to files that move', rooms: ['theme'], packages: ['sharp'] },
  narration: { duty: 'facts to sentences', rooms: ['places', 'quantities', 'facts'], packages: ['handlebars'] },
  page: { duty: 'pages from facts and finished pictures', rooms: ['places', 'quantities', 'theme', 'facts'], packages: ['handlebars'] },
};
