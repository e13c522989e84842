import type { GuidedAsked, GuidedGiven } from '@ebbline/shared/contract/guided-test';

/** What the fields hold, by the key of what is asked. */
export type Typed = Record<string, string | number>;

/** The fields as they stand before anything is typed. */
export const usualTyped = (asks: readonly GuidedAsked[]): Typed =>
  Object.fromEntries(asks.map(({ key, usual }) => [key, usual ?? '']));

/** What is sent; null while something is missing or can't be meant. */
export function givenOf(asks: readonly GuidedAsked[], typed: Typed): GuidedGiven | null {
  const given: GuidedGiven = {};
  for (const { key, kind, least, most } of asks) {
    const value = typed[key] ?? '';
    if (kind === 'text') {
      if (String(value).trim() === '') return null;
      given[key] = String(value).trim();
      continue;
    }
    if (typeof value !== 'number' || !Number.isFinite(value)) return null;
    if ((least !== null && value < least) || (most !== null && value > most)) return null;
    given[key] = value;
  }
  return given;
}
