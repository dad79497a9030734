// A command that a person is told to type next, so that it works as it stands: with the folders that this one was given.
import { defaults } from './options.js';

export function nextCommand(words: readonly string[], folders: Partial<typeof defaults>): string {
  const given = Object.entries(folders).flatMap(([name, value]) => (value === defaults[name as keyof typeof defaults] ? [] : [`--${name}`, value]));
  return ['figureproof', ...[...words, ...given].map(asWord)].join(' ');
}

/** As a shell takes it for one word. */
function asWord(text: string): string {
  return /^[\p{L}\p{N}./:@%+=,_-]+$/u.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`;
}
