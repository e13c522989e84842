import type { ListedAlarm } from '@ebbline/shared/contract/alarm-list';

type Grade = ListedAlarm['priority'];
type Severity = ListedAlarm['severity'];

/** The columns of the grid by which a priority is computed. s */
export const gridColumns = [
  { words: 'under 3 min', below: 180 },
  { words: '3 to 10 min', below: 600.000_001 },
  { words: 'over 10 min', below: Infinity },
] as const;

export const priorityGrid: { readonly [S in Severity]: readonly [Grade, Grade, Grade] } = {
  severe: [1, 2, 3],
  major: [2, 3, 3],
  minor: [3, 3, 'alert'],
};

/** Which column a time to respond belongs to. */
export const gridColumnOf = (timeToRespondSeconds: number): number =>
  gridColumns.findIndex(({ below }) => timeToRespondSeconds < below);
