// The episode as a schema.org Dataset, for those who search for data.
import type { Facts } from '../facts/index.js';
import { nameOf, splitKey } from '../facts/index.js';

/** JSON that can stand inside a script element: no "<", no line separators. */
export function jsonLd(facts: Facts, downloads: readonly { name: string; href: string; type: string }[]): string {
  const { about } = facts;
  const measures = new Map<string, string>();
  for (const key of facts.keys()) {
    const parts = splitKey(key);
    const unit = facts.readings(key)[0]?.quantity.unit;
    if (parts && unit && !measures.has(parts.measure)) measures.set(parts.measure, unit.symbol);
  }
  const data = {
    '@context': 'https://schema.org', '@type': 'Dataset', name: about.title || about.id,
    description: about.summary || `Readings and results of the episode “${about.title || about.id}”.`,
    ...(about.date && { datePublished: about.date }),
    ...(about.method.length && { measurementMethod: about.method.map((m) => m.text).join(' ') }),
    ...(about.instruments.length && { measurementTechnique: about.instruments.map((i) => i.name) }),
    variableMeasured: [...measures].map(([id, unitText]) => ({ '@type': 'PropertyValue', name: nameOf(about, 'measure', id), ...(unitText && { unitText }) })),
    distribution: downloads.map((d) => ({ '@type': 'DataDownload', name: d.name, encodingFormat: d.type, contentUrl: d.href })),
  };
  return JSON.stringify(data).replace(/[<>&\u2028\u2029]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
