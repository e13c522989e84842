import type { PermitChange, PermitRecord } from '../../evaluation/pipeline/permit-record';
import type { JournalEntry } from './journal-entry';
import { storedNumber, storedText } from './stored-text';
import { nothing } from './to-journal-entry';

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
export function permitEntry(
  { what, permit, atMs, actor, station, comment }: PermitChange,
  wallMs: number,
): JournalEntry {
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(atMs),
    kind: actor === null ? 'system' : 'action',
    cause: causes[what],
    alarm: storedText(permitName(permit.id)),
    unit: storedText(permit.unit),
    value: storedNumber(permit.expectedInLeakM3PerS),
    unitOfMeasure: 'm3/s',
    place: storedText(permit.branch),
    sinceMs: Math.round(permit.openedMs),
    actor: storedText(actor),
    station: storedText(station),
    reason: storedText(`${said[what](permit)}${comment === null || comment === '' ? '' : `: ${comment}`}`),
    record: what === 'closed' ? null : storedText(JSON.stringify(permit)),
  };
}

const said: Readonly<Record<PermitChange['what'], (permit: PermitRecord) => string>> = {
  opened: ({ untilMs }) => `permit opened until ${new Date(untilMs).toISOString()}`,
  overdue: () => 'permit overdue',
  moved: ({ untilMs }) => `permit until ${new Date(untilMs).toISOString()} now`,
  closed: ({ closedBy }) =>
    closedBy === null ? 'permit closed by the program, all is back at its baseline' : 'permit closed',
};
