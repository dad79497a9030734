// A record that holds no reading at all: it is sound, and a build of it says nothing.
import type { Finding } from './places/index.js';
import type { Episode } from './records/index.js';

/** A note where nothing stands in the record to be told; none where errors may have kept readings out. */
export function nothingRead(episode: Episode, unread: readonly Finding[]): Finding[] {
  if (episode.readings.length > 0 || unread.length > 0) return [];
  return [{ code: 'nothing-read', severity: 'note', place: episode.place, subject: episode.id, message: 'The record holds no reading yet, so there is nothing to tell; fill in readings, or name tables or logs' }];
}
