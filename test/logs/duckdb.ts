// Where the optional engine is installed: .ci/run does it; elsewhere `npm install --no-save @duckdb/node-api`, or DUCKDB names a folder.
import { findDuckdb } from '../../pipeline/files/index.js';

export const duckdb = findDuckdb();
