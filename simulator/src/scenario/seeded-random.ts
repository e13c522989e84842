import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomSource } from '../sensors/random-source';

/** A stream of chance of its own for each name under a seed: adding a unit does not change the others. */
export function seededRandom(seed: number, name: string): RandomSource {
  const generator = xoroshiro128plus(mixed(seed, name));
  return { uniform: () => uniformFloat64(generator) };
}

/** FNV-1a over the name, started from the seed (public domain, Fowler, Noll and Vo). */
function mixed(seed: number, name: string): number {
  let hash = 0x811c9dc5 ^ seed;
  for (let i = 0; i < name.length; i += 1) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  return hash | 0;
}
