/** One thing wrong with the small site, and what must be said about it: the key, and a part of the message. */
export type FaultRow = readonly [
  title: string,
  keys: readonly (string | number)[],
  value: unknown,
  key: string,
  message: RegExp,
];

export const point = (unit: string, id: string, key: string) => ['units', unit, 'points', id, key];
