/**
 * Gives one object for all that are equal. Units of a template have the same figures: a copy for each would have to come from main
 * memory once a unit and second, one for all stays in the processor's cache. For plain data that nothing writes to any more.
 */
export class Alike {
  private readonly known = new Map<string, unknown>();

  once<Value extends object | null>(value: Value): Value {
    const key = `${value?.constructor.name ?? ''} ${JSON.stringify(value, telling)}`;
    const before = this.known.get(key);
    if (before !== undefined) return before as Value;
    this.known.set(key, value);
    return value;
  }
}

/** JSON writes NaN, ∞ and nothing alike, and a map as if it were empty: such must not pass for equal. */
function telling(_key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) return `number ${value}`;
  if (typeof value === 'function' || value instanceof Map || value instanceof Set)
    throw new TypeError('only plain data can be told to be equal');
  return value;
}
