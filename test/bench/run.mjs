// npm run bench [NAME…]: every *.bench.mjs beside this file, in order of name. Ratios within one run count; milliseconds depend on the machine.
import { readdirSync } from 'node:fs';

const asked = process.argv.slice(2);
for (const file of readdirSync(import.meta.dirname).filter((f) => f.endsWith('.bench.mjs')).sort()) {
  const name = file.replace('.bench.mjs', '');
  if (asked.length > 0 && !asked.includes(name)) continue;
  const { says, run } = await import(`./${file}`);
  console.log(`\n${name}: ${says}`);
  for (const row of await run()) {
    const verdict = row.most === undefined ? '' : row.ratio <= row.most ? `  (at most ${row.most}: held)` : `  (at most ${row.most}: NOT HELD)`;
    console.log(`  ${row.what.padEnd(58)} ${row.ratio === undefined ? '' : row.ratio.toFixed(2).padStart(6)}${verdict}${row.detail ? `  ${row.detail}` : ''}`);
  }
}
