// The tables of README.md and DEVELOPERS.md as the code has them.
import { rooms } from './rooms.js';

/** What stands between `<!-- name -->` and `<!-- /name -->`. */
export function between(text: string, name: string): string {
  return new RegExp(`<!-- ${name} -->\\n([\\s\\S]*?)\\n?<!-- /${name} -->`).exec(text)?.[1]?.trim() ?? '';
}

export function replaceBetween(text: string, name: string, table: string): string {
  return text.replace(new RegExp(`(<!-- ${name} -->\\n)[\\s\\S]*?(<!-- /${name} -->)`), (_, a: string, b: string) => `${a}${table.trim()}\n${b}`);
}

export function roomsTable(): string {
  const rows = Object.entries(rooms).map(([name, r]) => `| \`${name}/\` | ${r.duty} | ${r.rooms.join(', ') || 'nothing of ours'} | ${r.packages.map((p) => `\`${p}\``).join(', ') || 'none'} |`);
  return ['| room | duty | may import | packages |', '| --- | --- | --- | --- |', ...rows].join('\n');
}

export function exitCodesTable(codes: Record<string, { code: number; says: string }>): string {
  return ['| code | means |', '| --- | --- |', ...Object.values(codes).map((c) => `| ${c.code} | ${c.says} |`)].join('\n');
}

/** Every kind of picture in one line. */
export function picturesTable(kinds: readonly { medium: string; kind: string; says: string }[]): string {
  return ['| picture | shows |', '| --- | --- |', ...kinds.map((k) => `| \`${k.medium}: ${k.kind}\` | ${k.says} |`)].join('\n');
}
