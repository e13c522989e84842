import type { Figure } from './live-feed';

/** True where the unit has nothing to work this out from, now or ever, or its site file does not set what it takes. */
export const isAbsent = ({ value, age, reasons }: Pick<Figure, 'value' | 'age' | 'reasons'>): boolean =>
  value === null && age === null && (reasons.includes('notApplicable') || reasons.includes('notSet'));
