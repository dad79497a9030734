import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export const template = (name: string): string => readFileSync(join(import.meta.dirname, '../../templates', name), 'utf8');
