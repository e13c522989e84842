import type { Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';

/** What a rule says of one value, in alarm or not: put in afresh, so that nothing of the value before weighs. */
export type Judge = (value: number, active: boolean) => Verdict;

/** Where an entry is raised and where it clears again, written by hand, in the unit of what is moved. */
export interface Swing {
  readonly what: string;
  readonly raises: number;
  readonly clears: number;
  /** A rule that keeps nothing of values before is made once, others for each swing. */
  readonly judge: () => Judge;
}
