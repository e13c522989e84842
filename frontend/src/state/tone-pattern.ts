import type { Priority } from '@ebbline/shared/contract/alarm';

/** One tone: from when on, for how long, how high. */
export interface Tone {
  readonly startS: number;
  readonly lengthS: number;
  readonly frequencyHz: number;
}

export interface TonePattern {
  readonly tones: readonly Tone[];
  /** From one beginning to the next while nobody answers, s. */
  readonly everyS: number;
}

/** Tones of one length with one pause between them. */
const row = (lengthS: number, pauseS: number, frequenciesHz: readonly number[]): Tone[] =>
  frequenciesHz.map((frequencyHz, i) => ({ startS: i * (lengthS + pauseS), lengthS, frequencyHz }));

/**
 * Told apart by number and length of the tones, so that whoever hears no pitch knows them too: five short that go up and
 * down, three of middle length that fall, one that is long and soft. Ours; no standard has them.
 */
export const tonePatterns: Readonly<Record<Priority, TonePattern>> = {
  1: { tones: row(0.14, 0.08, [880, 1175, 880, 1175, 880]), everyS: 4 },
  2: { tones: row(0.26, 0.14, [784, 698, 587]), everyS: 12 },
  3: { tones: row(0.7, 0, [523]), everyS: 45 },
};

export const lengthOf = ({ tones }: TonePattern): number =>
  Math.max(...tones.map(({ startS, lengthS }) => startS + lengthS));
