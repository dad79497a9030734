// Content hashes: the only notion of "unchanged" here.
import { createHash } from 'node:crypto';

/** SHA-256 in hex. */
export function hash(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}

/** One hash of several values; anything JSON can tell apart gives another hash. */
export function hashOf(...values: unknown[]): string {
  return hash(JSON.stringify(values));
}
