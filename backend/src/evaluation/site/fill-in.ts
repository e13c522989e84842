/** What `{…}` in topics and paths stands for at this place. */
export type FillIns = Readonly<Record<string, string>>;

/** Fills `{unit}` and the like in; names that mean nothing here are returned as `unknown`. */
export function fillIn(text: string, fillIns: FillIns): { readonly text: string; readonly unknown: readonly string[] } {
  if (!text.includes('{')) return { text, unknown: [] };
  const unknown: string[] = [];
  const filled = text.replace(/\{([^{}]*)\}/g, (whole, name: string) => {
    const value = Object.hasOwn(fillIns, name) ? fillIns[name] : undefined;
    if (value === undefined) unknown.push(name);
    return value ?? whole;
  });
  return { text: filled, unknown };
}

/** `a.b.c`, or a list of keys where a key itself has a dot → keys, filled in. */
export function pathKeys(path: string | readonly string[], fillIns: FillIns): readonly string[] {
  const keys = typeof path === 'string' ? path.split('.') : path;
  return keys.map((key) => fillIn(key, fillIns).text);
}

/** Paths without `{…}` are the same for every unit of a template: read once, and then one and the same list. */
export class PathReader {
  private readonly known = new Map<string | readonly string[], readonly string[]>();

  keys(path: string | readonly string[], fillIns: FillIns): readonly string[] {
    const found = this.known.get(path);
    if (found !== undefined) return found;
    const keys = pathKeys(path, fillIns);
    const varies = typeof path === 'string' ? path.includes('{') : path.some((key) => key.includes('{'));
    if (!varies) this.known.set(path, keys);
    return keys;
  }
}
