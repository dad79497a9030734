// A check as a person reads it: for `explain`, and for the table in the README.
import { checks } from './list.js';
import { thresholds } from './thresholds.js';

/** What a check says and why, its thresholds and both examples; undefined for an unknown name. */
export function describeCheck(name: string): string | undefined {
  const check = checks.find((c) => c.name === name);
  if (!check) return undefined;
  const values = (check.thresholds ?? []).map((t) => `  ${t}: ${thresholds[t].value} (${thresholds[t].says}; ${thresholds[t].source})`);
  const example = (title: string, { record, files }: typeof check.right): string[] => [
    '', title, ...indented(record), ...Object.entries(files ?? {}).flatMap(([file, text]) => [`  ${file}:`, ...indented(text)]),
  ];
  return [
    `${check.name} (${check.severity})`, check.says, '', check.why,
    ...(values.length ? ['', 'Thresholds, each of which a record may set under `thresholds:`', ...values] : []),
    ...example('Right', check.right), ...example('Wrong', check.wrong),
  ].join('\n');
}

/** The checks as a Markdown table, as it stands in the README. */
export function checksTable(): string {
  return ['| check | severity | says |', '| --- | --- | --- |', ...checks.map((c) => `| \`${c.name}\` | ${c.severity} | ${c.says} |`)].join('\n') + '\n';
}

function indented(text: string): string[] {
  return text.replace(/\n$/, '').split('\n').map((line) => `    ${line}`);
}
