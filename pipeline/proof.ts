// A script proofed against nothing but two tables. Given texts in, one object out; no disk.
import { type ProofResult, proof } from './claims/index.js';
import { Facts } from './facts/index.js';
import type { Finding, Source } from './places/index.js';
import { bareEpisode, readNames, readReadings } from './records/index.js';

/** Findings of the tables come first; a table that cannot be read at all yields no mentions. */
export function proofTables(script: Source, readings: Source, names: Source): ProofResult {
  const table = readReadings(readings);
  const spoken = readNames(names);
  const findings: Finding[] = [...table.findings, ...spoken.findings];
  if (!table.value) return { mentions: [], findings };
  const facts = new Facts(bareEpisode(table.value, spoken.value ?? [], readings.wholeLine(1)));
  const result = proof(script, facts);
  return { mentions: result.mentions, findings: [...findings, ...result.findings] };
}

/** The JSON form: lines and columns from 1 in UTF-16 units, ends exclusive. */
export function proofJson({ mentions, findings }: ProofResult): object {
  return {
    mentions: mentions.map((m) => ({
      line: m.place.line, column: m.place.column, endLine: m.place.endLine, endColumn: m.place.endColumn, text: m.text, verdict: m.verdict, kind: m.kind, from: m.from, facts: m.facts,
      said: m.said, recorded: m.recorded ?? null, derivation: m.derivation ?? null, why: m.why, slip: m.slip ?? null, suggest: m.suggest ?? null,
    })),
    findings: findings.map((f) => ({ code: f.code, severity: f.severity, file: f.place.file, line: f.place.line, column: f.place.column, message: f.message })),
  };
}
