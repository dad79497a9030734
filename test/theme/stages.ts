// The stages of the shipped themes, for tests that draw.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { shippedTheme } from '../../pipeline/records/index.js';
import { type Stage, stageIds, stageOf } from '../../pipeline/theme/index.js';

export const template = (name: string): string => readFileSync(join(import.meta.dirname, '../../templates', name), 'utf8');

export const dark = shippedTheme('dark', template);
export const light = shippedTheme('light', template);
export const wide = stageOf(dark, 'wide');
export const { colours } = dark;
/** Every stage in the usual theme. */
export const stages: Stage[] = stageIds.map((id) => stageOf(dark, id));
