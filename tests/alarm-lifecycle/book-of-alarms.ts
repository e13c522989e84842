import { AlarmBook, type AlarmIdentity } from '../../backend/src/evaluation/alarm-lifecycle/alarm-book';

export const identity = (latching: boolean): AlarmIdentity => ({
  alarm: latching ? 'm1:WATER-1' : 'm1:MARGIN-1',
  entry: latching ? 'WATER-1' : 'MARGIN-1',
  unit: 'm1',
  hall: 'h1',
  latching,
});

export const facts = (sinceMs: number, priority: 1 | 2 | 3 = 2) => ({
  priority,
  sinceMs,
  value: 4000,
  limit: 5000,
  unitOfMeasure: 'Pa',
  where: 'Floor supply main',
  foldedUnder: null,
});

export const person = (operator: string) => ({ operator, station: 'desk', comment: '' });

/** A book in which one alarm has been brought to a state by the shortest way. */
export function bookIn(
  state:
    | 'normal'
    | 'unacknowledged'
    | 'acknowledged'
    | 'returnedUnacknowledged'
    | 'latchedUnacknowledged'
    | 'latchedAcknowledged',
): { readonly book: AlarmBook; readonly latching: boolean; readonly alarm: string } {
  const latching = state.startsWith('latched');
  const book = new AlarmBook();
  const { alarm } = identity(latching);
  if (state !== 'normal') book.raise(0, 'conditionTrue', identity(latching), facts(1000), 2000);
  if (state === 'acknowledged' || state === 'latchedAcknowledged') book.acknowledge(alarm, person('Ada'), 3000);
  if (state === 'returnedUnacknowledged' || latching) book.clear(0, 4000, 'conditionClear');
  return { book, latching, alarm };
}
