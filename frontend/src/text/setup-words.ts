import type { SetupPoint } from '@ebbline/shared/contract/setup';

export const arrivingWords: { readonly [S in SetupPoint['arriving']]: string } = {
  arriving: 'arriving',
  silent: 'silent',
  never: 'never came',
};

/** A path of keys in a payload as people write it; a bare number has none. */
export const sayPath = (path: readonly string[]): string =>
  path.length === 0 ? 'the whole payload' : path.join(' → ');

/** A choice of the simulator as people read it: `asUsual` is as usual. Point ids, with a dot in them, stay. */
export const choiceWord = (value: string): string =>
  value.includes('.')
    ? value
    : value.replace(/([a-z])([A-Z])/g, (_, one: string, other: string) => `${one} ${other.toLowerCase()}`);
