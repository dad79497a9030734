// The measure of a cold build: the same libraries imported once, the same pictures drawn at the same sizes, one after another.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { open } from '../../dist/build.js';
import { planPictures } from '../../dist/draw.js';
import { rasterise } from '../../dist/graphics/index.js';

const [data, out] = process.argv.slice(2);
const { episodes, asked } = open({ data, only: [], cache: undefined });
for (const id of asked) {
  const facts = await episodes.facts(id);
  if (!facts) continue;
  const folder = join(out, id, 'pictures');
  mkdirSync(folder, { recursive: true });
  const { pictures } = await planPictures(facts);
  for (const { stem, prepared, sizes } of pictures.flatMap(({ stem, sheets }) => sheets.map((sheet) => ({ stem, ...sheet })))) {
    const { outlined } = await prepared.draw({ draft: false });
    for (const { width, height } of sizes) writeFileSync(join(folder, `${stem}-${width}x${height}.png`), await rasterise(outlined, width, height));
  }
}
