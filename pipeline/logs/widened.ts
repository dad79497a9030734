/** The same numbers in an array with room for more. */
export function widened(from: Float64Array, size: number): Float64Array<ArrayBuffer> {
  const to = new Float64Array(size);
  to.set(from);
  return to;
}
