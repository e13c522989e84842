import type { StepRecord } from './guided-record';

/** Where a figure rests on the least or the greatest of these readings: what of their steps nobody saw. */
export function unseenNotes(steps: readonly StepRecord[], readings: readonly string[]): string[] {
  return steps.flatMap(({ measured, title: step }) =>
    (measured?.unseen ?? []).flatMap(({ reading, samples }) => {
      if (!readings.includes(reading)) return [];
      const title = measured?.readings.find((one) => one.reading === reading)?.title ?? reading;
      return [`${step}: ${title} had no value for ${samples} s, so its least and its greatest are those of the rest.`];
    }),
  );
}
