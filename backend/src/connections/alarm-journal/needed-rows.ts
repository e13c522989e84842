/**
 * Causes of rows that a restart reads again, beside the standing records: they are kept whole in the journal's file when they
 * are sealed. What stands (alarms, alerts, permits, tests, modes) is kept apart from the rows anyway.
 */
export const neededCauses = ['handEntered', 'handCorrected', 'settingChanged'] as const;

export const neededAfterSealing = (cause: string | null): boolean => neededCauses.some((needed) => needed === cause);
