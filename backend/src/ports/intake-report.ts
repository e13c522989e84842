import type { Intake } from '@ebbline/shared/contract/http-api';
import type { LastPayload } from '@ebbline/shared/contract/setup';

/** What has come in by topic, and what was refused and why. */
export interface IntakeReport {
  report(): Intake;
  /** The newest payload of a topic since it was first asked for; kept while it is asked for again and again. */
  lastPayload(topic: string): LastPayload;
}

export const INTAKE_REPORT = Symbol('IntakeReport');
