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

interface Step<S, T> { text: string; before: S; made: T }

/** So many sentences left out at once are followed without their state. */
const near = 3;

/** The same for steps that depend on what came before them as well: the last run is followed along, sentence by sentence. */
export class KeptSteps<S, T> {
  #now: Step<S, T>[] = [];
  #before: Step<S, T>[] = [];
  #at = 0;
  #where: Map<string, { places: number[]; next: number }> | undefined;

  constructor(private readonly same: (a: S, b: S) => boolean) {}

  get(text: string, before: S, make: () => T): T {
    const made = this.#known(text, before) ?? make();
    this.#now.push({ text, before, made });
    return made;
  }

  /** A step is taken again where text and state are the same. What is new in the text, and stands again far below, is no reason to leave out what lies between. */
  #known(text: string, before: S): T | undefined {
    const here = this.#before[this.#at]?.text === text;
    const i = here ? this.#at : this.#find(text);
    const known = i === undefined ? undefined : this.#before[i];
    if (i === undefined || !known) return undefined;
    const same = this.same(known.before, before);
    if (same || here || i - this.#at <= near) this.#at = i + 1;
    return same ? known.made : undefined;
  }

  turn(): void {
    this.#before = this.#now;
    this.#now = [];
    this.#at = 0;
    this.#where = undefined;
  }

  /** The next place of a text in the last run. */
  #find(text: string): number | undefined {
    if (!this.#where) {
      this.#where = new Map();
      for (const [i, s] of this.#before.entries()) {
        const known = this.#where.get(s.text);
        if (known) known.places.push(i);
        else this.#where.set(s.text, { places: [i], next: 0 });
      }
    }
    const found = this.#where.get(text);
    if (!found) return undefined;
    while (found.next < found.places.length && found.places[found.next]! < this.#at) found.next++;
    return found.places[found.next];
  }
}
