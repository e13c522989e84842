/** What `{…}` in topics and paths stands for at this place. */
export type FillIns = Readonly<Record<string, string>>;

/** Fills `{unit}` and the like in; names that mean nothing here are returned as `unknown`. */
export function fillIn(text: string, fillIns: FillIns): { readonly text: string; readonly unknown: readonly string[] } {
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
