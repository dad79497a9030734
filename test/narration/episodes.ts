// Records by hand for the narration tests: names as a person would give them.
import type { Facts } from '../../pipeline/facts/index.js';
import { narrate, type VoiceOptions } from '../../pipeline/narration/index.js';
import type { Episode, Measure, Named, Setting, Setup } from '../../pipeline/records/index.js';
import { factsOf } from '../facts/episode.js';

export const place = { file: 'data/example/episode.yaml', line: 1, column: 1, endLine: 1, endColumn: 1 };

export function named(id: string, ...spoken: string[]): Named {
  return { id, name: id, spoken: spoken.length ? spoken : [id.replace(/[-_]/g, ' ')], place };
}

export function mapOf<T extends { id: string }>(...items: T[]): Map<string, T> {
  return new Map(items.map((i) => [i.id, i]));
}

export const arrangement = (id: string, ...spoken: string[]): Setup => ({ ...named(id, ...spoken), kind: 'arrangement' });
export const product = (id: string, ...spoken: string[]): Setup => ({ ...named(id, ...spoken), kind: 'product' });
export const setting = (id: string, kind: Setting['kind'], ...spoken: string[]): Setting => ({ ...named(id, ...spoken), kind, parameters: [] });
export const measure = (id: string, better: Measure['better'] = 'neither', change: Partial<Measure> = {}): Measure => ({ ...named(id), better, ...change });

export const bench = arrangement('bench', 'the bench', 'on the bench');
export const box = arrangement('box', 'the box', 'in the box');
export const stock = setting('stock', 'stock', 'stock', 'at stock');
export const undervolt = setting('undervolt', 'undervolt', 'the undervolt');
export const parts = mapOf(named('core', 'the core'), named('hotspot', 'the hotspot'), named('board', 'the board'), named('average', 'on average', 'the average frame rate'), named('room', 'the room'));

/** The texts of all sentences in which `words` stand; all of them without. */
export function said(readings: string, change: Partial<Episode> = {}, options: Partial<VoiceOptions> = {}, words = ''): string[] {
  return sayings(factsOf(readings, { parts, ...change }), options, words);
}

export function sayings(facts: Facts, options: Partial<VoiceOptions> = {}, words = ''): string[] {
  return narrate(facts, options).map((s) => s.text).filter((t) => t.includes(words));
}
