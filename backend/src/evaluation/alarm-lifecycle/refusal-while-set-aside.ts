import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';

export type RefusalWhileSetAside = 'ALARM_SHELVED' | 'ALARM_SUPPRESSED_BY_DESIGN' | 'ALARM_OUT_OF_SERVICE';

const refusals: Readonly<Record<AlarmMode, RefusalWhileSetAside | null>> = {
  inService: null,
  shelved: 'ALARM_SHELVED',
  suppressedByDesign: 'ALARM_SUPPRESSED_BY_DESIGN',
  outOfService: 'ALARM_OUT_OF_SERVICE',
};

/** What is not told can neither be acknowledged nor reset: why not; null in service. */
export const refusalWhileSetAside = (mode: AlarmMode): RefusalWhileSetAside | null => refusals[mode];
