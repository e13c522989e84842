/**
 * Causes of rows that are read again after they were sealed, beside the standing records: they are kept whole in the
 * journal's file when they are sealed. What stands (alarms, alerts, permits, tests, modes) is kept apart from the rows anyway.
 */
export const neededCauses = [
  'handEntered',
  'handCorrected',
  'settingChanged',
  // What waits for a second person is found again by them, however long it waits.
  'settingProposed',
  'settingWithdrawn',
  // Between an end and the next start nothing was judged, of which past hours tell.
  'programStarted',
  'programEnded',
] as const;

export const neededAfterSealing = (cause: string | null): boolean => neededCauses.some((needed) => needed === cause);
