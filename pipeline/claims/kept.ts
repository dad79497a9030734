// What was made for the last reading of a text, for as long as the next one asks for it: after an edit only what changed is
// made anew, and what no longer stands in the text is let go.

export class Kept<T> {
  #now = new Map<string, T>();
  #before = new Map<string, T>();

  get(key: string, make: () => T): T {
    let value = this.#now.get(key);
    if (value === undefined) {
      value = this.#before.get(key) ?? make();
      this.#now.set(key, value);
    }
    return value;
  }

  /** The text is read through: what it did not ask for goes. */
  turn(): void {
    this.#before = this.#now;
    this.#now = new Map();
  }
}
