// What was found as the text of a SARIF log, each code with what it stands for.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { home } from './files/index.js';
import { type Finding, type PrintOptions, type Rule, sarif } from './places/index.js';
import { proofRules } from './proof-rules.js';

export async function sarifText(findings: readonly Finding[], print: Pick<PrintOptions, 'line' | 'path'>): Promise<string> {
  const rules = new Map<string, Rule>(Object.entries(proofRules));
  if (findings.some((f) => !rules.has(f.code))) {
    const { checks } = await import('./checks/index.js');
    for (const c of checks) rules.set(c.name, { says: c.says, help: c.why });
  }
  const { version } = JSON.parse(readFileSync(`${home}/package.json`, 'utf8')) as { version: string };
  const uri = (file: string): string => { const path = print.path(file); return path.startsWith('..') ? pathToFileURL(resolve(path)).href : path; };
  return JSON.stringify(sarif(findings, { version, rule: (code) => rules.get(code), uri, line: print.line }), null, 1);
}
