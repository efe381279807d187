/** Remembers the last thing it made, and makes another only when what it is made from has changed. */
export class Last<Value> {
  #kept: { readonly from: readonly unknown[]; readonly value: Value } | null = null;

  /** @param from - What the value is made from, told apart as `Object.is` does. */
  of(from: readonly unknown[], make: () => Value): Value {
    const kept = this.#kept;
    if (kept && kept.from.every((part, index) => Object.is(part, from[index]))) return kept.value;
    const value = make();
    this.#kept = { from, value };
    return value;
  }
}
