import { z } from 'zod';

/**
 * Whether an alarm is told at all: the second dimension of ANSI/ISA-18.2-2016 and IEC 62682, apart from its state.
 * Only `inService` stands in the main list; each other has a list of its own.
 */
export const alarmModes = ['inService', 'shelved', 'suppressedByDesign', 'outOfService'] as const;
export const alarmModeSchema = z.enum(alarmModes);
export type AlarmMode = z.infer<typeof alarmModeSchema>;
