// A map of a handful of values to what each costs. Thousands of them are made for a script, most with one or two entries: for so
// few, going through a chain is quicker than a hash, and takes a fraction of the memory.

interface Entry { key: string; cost: number; next: Entry | undefined }

export class Few {
  size = 0;
  /** The chain, to be gone through only. */
  first: Entry | undefined = undefined;

  get(key: string): number | undefined {
    for (let e = this.first; e; e = e.next) if (e.key === key) return e.cost;
    return undefined;
  }

  has(key: string): boolean {
    for (let e = this.first; e; e = e.next) if (e.key === key) return true;
    return false;
  }

  set(key: string, cost: number): void {
    let last: Entry | undefined;
    for (let e = this.first; e; e = e.next) {
      if (e.key === key) { e.cost = cost; return; }
      last = e;
    }
    const entry = { key, cost, next: undefined };
    if (last) last.next = entry;
    else this.first = entry;
    this.size++;
  }

  delete(key: string): void {
    let last: Entry | undefined;
    for (let e = this.first; e; last = e, e = e.next) {
      if (e.key !== key) continue;
      if (last) last.next = e.next;
      else this.first = e.next;
      this.size--;
      return;
    }
  }

  clear(): void {
    this.first = undefined;
    this.size = 0;
  }

  /** In the order in which they were set first; a list of its own. */
  keys(): string[] {
    const out: string[] = [];
    for (let e = this.first; e; e = e.next) out.push(e.key);
    return out;
  }

  some(test: (key: string) => boolean): boolean {
    for (let e = this.first; e; e = e.next) if (test(e.key)) return true;
    return false;
  }
}
