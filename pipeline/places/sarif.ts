// Findings as SARIF 2.1.0 (OASIS), for editors and code review.
import type { Location, Log, Region, ReportingDescriptor, Result } from 'sarif';
import type { Finding } from './finding.js';
import type { Place } from './place.js';

/** What a code stands for: one line, and how to put it right. */
export interface Rule {
  says: string;
  help: string;
}

export interface SarifOptions {
  /** Of the program. */
  version: string;
  /** Undefined for a code without a description of its own. */
  rule: (code: string) => Rule | undefined;
  /** A relative reference with "/" between its parts, or an absolute URI; not yet percent-encoded. */
  uri: (file: string) => string;
  /** The text of a line of a file, where it is at hand. */
  line: (file: string, line: number) => string | undefined;
}

const schema = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** The same findings give the same log: rules stand in the order of their codes, results as given. */
export function sarif(findings: readonly Finding[], options: SarifOptions): Log {
  const codes = [...new Set(findings.map((f) => f.code))].sort();
  const rules = codes.map((id): ReportingDescriptor => {
    const rule = options.rule(id);
    const level = findings.find((f) => f.code === id)!.severity;
    return { id, shortDescription: { text: rule?.says ?? id }, ...(rule && { help: { text: rule.help } }), defaultConfiguration: { level } };
  });
  return {
    $schema: schema,
    version: '2.1.0',
    runs: [{
      tool: { driver: { name: 'figureproof', version: options.version, rules } },
      columnKind: 'utf16CodeUnits',
      results: findings.map((f) => result(f, codes.indexOf(f.code), options)),
    }],
  };
}

function result(f: Finding, ruleIndex: number, options: SarifOptions): Result {
  const { said, recorded, derivation, slip, subject } = f;
  const related = (f.related ?? []).map(({ place, label }, id): Location => ({ id, ...location(place, options), message: { text: label || 'a reading that it rests on' } }));
  const fix = [f.suggest === undefined ? undefined : { place: f.place, said, put: f.suggest }, f.turn && { place: f.turn.place, said: f.turn.text, put: f.turn.suggest }].find((x) => x && quotes(x, options));
  const properties = Object.fromEntries(Object.entries({ subject, said, recorded, derivation, slip, suggest: f.suggest ?? f.turn?.suggest }).filter(([, v]) => v !== undefined));
  return {
    ruleId: f.code,
    ruleIndex,
    level: f.severity,
    message: { text: [f.message, slip && !f.message.includes(slip) ? `Likely: ${slip}.` : ''].filter(Boolean).join(' ') },
    locations: [location(f.place, options)],
    ...(related.length > 0 && { relatedLocations: related }),
    ...(fix !== undefined && {
      fixes: [{ description: { text: `Write "${fix.put}"` }, artifactChanges: [{ artifactLocation: { uri: encode(options.uri(fix.place.file)) }, replacements: [{ deletedRegion: region(fix.place), insertedContent: { text: fix.put } }] }] }],
    }),
    ...(f.accepted && { suppressions: [{ kind: 'external', status: 'accepted', justification: f.accepted.reason, location: location(f.accepted.place, options) }] }),
    ...(Object.keys(properties).length > 0 && { properties }),
  };
}

/** Whether what stands at the place is just what was said, so that it can be replaced. */
function quotes({ place, said }: { place: Place; said: string | undefined }, { line }: SarifOptions): boolean {
  return said !== undefined && place.line === place.endLine && line(place.file, place.line)?.slice(place.column - 1, place.endColumn - 1) === said;
}

function location(place: Place, options: SarifOptions): Location {
  return { physicalLocation: { artifactLocation: { uri: encode(options.uri(place.file)) }, region: region(place) } };
}

function region({ line, column, endLine, endColumn }: Place): Region {
  return { startLine: line, startColumn: column, endLine, endColumn };
}

function encode(uri: string): string {
  return uri.includes('://') ? uri : uri.split('/').map(encodeURIComponent).join('/');
}
