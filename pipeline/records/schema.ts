// The record and the theme as JSON Schema 2020-12, for completion and first checks in editors; made from the very shapes that read it.
import { recordShape } from './record-shape.js';
import { themeShape } from './theme-shape.js';
import { definitions, type JsonObject } from './shape.js';

export function recordSchema(): JsonObject {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'episode.schema.json',
    title: 'Figureproof test record',
    ...recordShape.schema(),
    $defs: Object.fromEntries([...definitions].map(([name, shape]) => [name, shape.schema()])),
  };
}

export function themeSchema(): JsonObject {
  return { $schema: 'https://json-schema.org/draft/2020-12/schema', $id: 'theme.schema.json', title: 'Figureproof theme', ...themeShape.schema() };
}
