/** A priority queue: the smallest key comes out first. */

interface Entry<Value> {
  readonly key: number;
  readonly value: Value;
}

/** A binary heap. `push` and `pop` take time in the logarithm of its size. */
export class Heap<Value> {
  private readonly entries: Entry<Value>[] = [];

  /** The smallest key, or Infinity when the heap is empty. */
  get least(): number {
    return this.entries[0]?.key ?? Infinity;
  }

  push(key: number, value: Value): void {
    const { entries } = this;
    let at = entries.length;
    entries.push({ key, value });
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (entries[parent]!.key <= key) break;
      entries[at] = entries[parent]!;
      at = parent;
    }
    entries[at] = { key, value };
  }

  pop(): Value | undefined {
    const { entries } = this;
    const top = entries[0];
    const last = entries.pop();
    if (top && last && entries.length > 0) this.sink(last);
    return top?.value;
  }

  private sink(entry: Entry<Value>): void {
    const { entries } = this;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= entries.length) break;
      if (child + 1 < entries.length && entries[child + 1]!.key < entries[child]!.key) child += 1;
      if (entries[child]!.key >= entry.key) break;
      entries[at] = entries[child]!;
      at = child;
    }
    entries[at] = entry;
  }
}
