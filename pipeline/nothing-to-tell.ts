// A record that holds no reading, a text that holds no word: both are sound, and nothing can be told of them.
import { type Finding, nameInRecord, type Source } from './places/index.js';
import type { Episode } from './records/index.js';

/** A note where nothing stands in the record to be told; none where errors may have kept readings out. */
export function nothingRead(episode: Episode, unread: readonly Finding[]): Finding[] {
  if (episode.readings.length > 0 || unread.length > 0) return [];
  return [{ code: 'nothing-read', severity: 'note', place: episode.place, subject: episode.id, message: 'The record holds no reading yet, so there is nothing to tell; fill in readings, or name tables or logs' }];
}

/** A note where a text has not a word or a number in it, as when it was emptied by mistake. */
export function nothingSaid(text: Source): Finding[] {
  if (/[\p{L}\p{N}]/u.test(text.text)) return [];
  return [{ code: 'nothing-said', severity: 'note', place: text.place(0), subject: nameInRecord(text.file), message: 'There is nothing in this text, not a word, so there is nothing to proof' }];
}
