/**
 * The field at a path of keys; undefined where the path ends early. Every object comes from JSON.parse, so that a
 * function can only be inherited (`constructor`) and is no field; asking for own keys first would cost more than this.
 */
export function fieldAt(document: unknown, path: readonly string[]): unknown {
  let value = document;
  for (let i = 0; i < path.length; i += 1) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<string, unknown>)[path[i] ?? ''];
  }
  return typeof value === 'function' ? undefined : value;
}
