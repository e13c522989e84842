import type { JournalRow } from '@ebbline/shared/contract/alarm';

/** Permits stand in the journal beside the alarms, under ids of their own. */
export const isOfPermit = ({ alarm }: Pick<JournalRow, 'alarm'>): boolean => alarm?.startsWith('permit/') === true;
