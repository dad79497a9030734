// A record read again with its sensor logs on the disk and given to the engine, however small they are.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { disk, LargeFile } from '../../pipeline/files/index.js';
import type { Finding, Source } from '../../pipeline/places/index.js';
import { assemble, type Episode, outline } from '../../pipeline/records/index.js';

/** `findings` are those of assembling it. */
export function withEngine(source: Source, given: ReadonlyMap<string, Uint8Array>, module: string): { episode: Episode | undefined; findings: Finding[] } {
  const folder = mkdtempSync(join(tmpdir(), 'figureproof-'));
  try {
    const outlined = outline(source, 'example').value!;
    const { layouts, wants } = outlined;
    for (const [name, layout] of layouts) if (!layout.frames) layouts.set(name, { ...layout, engine: { module, least: 0 } });
    let files = 0;
    const onDisk = [...given].map(([path, bytes]): [string, Uint8Array | LargeFile] => {
      if (bytes.length === 0 || !path.endsWith('.csv') || wants.some((w) => w.path === path && w.as !== 'log')) return [path, bytes];
      const at = join(folder, `${files++}.csv`);
      writeFileSync(at, bytes);
      return [path, new LargeFile(at, disk, 1 << 30)];
    });
    const { value, findings } = assemble(outlined, new Map(onDisk));
    return { episode: value, findings };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
