import type { Annunciation } from './annunciation';
import type { FloodSpan } from './flood-meter';

/** What a flood began with and what was told in it, each alarm once and in order; what was found to follow from another is left out. */
export function firstOutsOf(flood: FloodSpan, annunciations: readonly Annunciation[]): Annunciation[] {
  const seen = new Map<string, Annunciation>();
  for (const one of annunciations) {
    if (one.atMs < flood.firstMs || one.atMs > flood.lastMs || one.foldedLater || seen.has(one.alarm)) continue;
    seen.set(one.alarm, one);
  }
  return [...seen.values()];
}
