import type { Annunciation } from './annunciation';

/** An alarm chatters where it is told so often within so long. Common practice, no source. */
export const chatterCount = 3;
export const chatterWindowMs = 60_000;

/** One spell in which an alarm chattered. */
export interface Burst {
  readonly alarm: string;
  readonly annunciations: readonly Annunciation[];
}

/** Spells of each alarm in which trailing windows (t − 60 s, t] hold three or more; windows that share an annunciation are one spell. */
export function burstsOf(annunciations: readonly Annunciation[]): Burst[] {
  return [...byAlarm(annunciations)].flatMap(([alarm, told]) =>
    spellsOf(told).map((spell) => ({ alarm, annunciations: spell })),
  );
}

function spellsOf(told: readonly Annunciation[]): Annunciation[][] {
  const spells: { from: number; to: number }[] = [];
  let from = 0;
  told.forEach(({ atMs }, index) => {
    while ((told[from]?.atMs ?? atMs) <= atMs - chatterWindowMs) from += 1;
    if (index - from + 1 < chatterCount) return;
    const last = spells.at(-1);
    if (last !== undefined && from <= last.to) last.to = index;
    else spells.push({ from, to: index });
  });
  return spells.map((spell) => told.slice(spell.from, spell.to + 1));
}

/** Annunciations of each alarm, in order. */
export function byAlarm(annunciations: readonly Annunciation[]): Map<string, Annunciation[]> {
  const found = new Map<string, Annunciation[]>();
  for (const one of annunciations) {
    const list = found.get(one.alarm);
    if (list === undefined) found.set(one.alarm, [one]);
    else list.push(one);
  }
  return found;
}
