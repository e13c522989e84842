import type { Intake } from '@ebbline/shared/contract/http-api';

/** What has come in by topic, and what was refused and why. */
export interface IntakeReport {
  report(): Intake;
}

export const INTAKE_REPORT = Symbol('IntakeReport');
