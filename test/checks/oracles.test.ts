// The rules under the checks against values published elsewhere. The tables name the source of each row.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { Exact } from '../../pipeline/quantities/index.js';
import { meanIsPossible } from '../../pipeline/checks/grim.js';

function table(name: string): Record<string, string>[] {
  return parse(readFileSync(resolve(import.meta.dirname, '../oracles', name)), { columns: true });
}

// Brown & Heathers 2017, as carried by the tests of the R package scrutiny.
test.each(table('grim_cases.csv'))('a mean of $reported_mean over $n × $items whole numbers: $consistent', ({ reported_mean, n, items, consistent }) => {
  const decimals = reported_mean!.split('.')[1]?.length ?? 0;
  expect(meanIsPossible(Exact.parse(reported_mean!)!, decimals, Number(n) * Number(items))).toBe(consistent === '1');
});
