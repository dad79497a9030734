// The bytes of a file as the log reader takes them: by stretches, more than once, never all at once.

export interface Bytes {
  readonly size: number;
  /** Fills `into` from offset `at` on and gives how many bytes it could; fewer than asked for only at the end, or in trouble. */
  read(into: Uint8Array, at: number): number;
  /** Why the bytes can no longer be had, as a clause: "it was changed while it was read". */
  readonly trouble?: string | undefined;
  /** Where they stand on the disk, if others may read them too. */
  readonly path?: string;
}

export function inMemory(bytes: Uint8Array): Bytes {
  return {
    size: bytes.length,
    read(into, at) {
      const part = bytes.subarray(at, at + into.length);
      into.set(part);
      return part.length;
    },
  };
}

export function bytesOf(from: Bytes | Uint8Array): Bytes {
  return from instanceof Uint8Array ? inMemory(from) : from;
}

/** All of them at once: for the start of a file, or one that is known to be small. */
export function stretch(bytes: Bytes, from: number, to: number): Uint8Array {
  const into = new Uint8Array(Math.max(0, Math.min(to, bytes.size) - from));
  return into.subarray(0, bytes.read(into, from));
}
