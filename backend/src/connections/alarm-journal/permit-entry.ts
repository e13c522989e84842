import type { PermitChange, PermitRecord } from '../../evaluation/pipeline/permit-record';
import { changeEntry } from './change-entry';
import type { JournalEntry } from './journal-entry';
import { storedNumber, storedText } from './stored-text';

/** Causes of the rows of a permit. */
const causes = {
  opened: 'permitOpened',
  overdue: 'permitOverdue',
  moved: 'permitMoved',
  closed: 'permitClosed',
} as const;
export const permitClosed = causes.closed;

/** Permits stand among the alarms that stand, under names that no alarm can have: ids of units hold no slash. */
const prefix = 'permit/';
export const permitName = (id: string): string => `${prefix}${id}`;
export const isPermitName = (name: string): boolean => name.startsWith(prefix);

/** One change of a permit; the record goes with it until it is closed, so that a restart finds it again. */
export const permitEntry = (change: PermitChange, wallMs: number): JournalEntry => ({
  ...changeEntry(
    {
      ...change,
      cause: causes[change.what],
      name: permitName(change.permit.id),
      unit: change.permit.unit,
      sinceMs: change.permit.openedMs,
      said: said[change.what](change.permit),
      record: change.what === 'closed' ? null : change.permit,
    },
    wallMs,
  ),
  value: storedNumber(change.permit.expectedInLeakM3PerS),
  unitOfMeasure: 'm3/s',
  place: storedText(change.permit.branch),
});

const said: Readonly<Record<PermitChange['what'], (permit: PermitRecord) => string>> = {
  opened: ({ untilMs }) => `permit opened until ${new Date(untilMs).toISOString()}`,
  overdue: () => 'permit overdue',
  moved: ({ untilMs }) => `permit until ${new Date(untilMs).toISOString()} now`,
  closed: ({ closedBy }) =>
    closedBy === null ? 'permit closed by the program, all is back at its baseline' : 'permit closed',
};
