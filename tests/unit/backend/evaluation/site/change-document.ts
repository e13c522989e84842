import { smallSiteDocument } from '../../../../helpers/small-site';

type Keys = readonly (string | number)[];
/** A value to put at a place; `undefined` takes the key out. */
export type Change = readonly [keys: Keys, value: unknown];
type Tree = Record<string | number, unknown>;

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null;

/** The small site's document with values put at places (`undefined` takes the key out). */
export function changed(...changes: readonly Change[]): unknown {
  const document = smallSiteDocument();
  for (const [keys, value] of changes) {
    let place: unknown = document;
    for (const key of keys.slice(0, -1)) {
      if (!isTree(place)) throw new Error(`nothing at ${keys.join('.')}`);
      place[key] ??= {};
      place = place[key];
    }
    const last = keys.at(-1);
    if (!isTree(place) || last === undefined) throw new Error(`nothing at ${keys.join('.')}`);
    if (value === undefined) Reflect.deleteProperty(place, last);
    else place[last] = value;
  }
  return document;
}
