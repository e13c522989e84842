import type { ValueProvider } from '@nestjs/common';
import { TRIAL_DESK } from '../ports/trial-desk';
import { RunnerTrialDesk, type TrialDeskParts } from '../runner/trial-desk/trial-desk';
import type { ClosingStack } from './closing-stack';

/** The desk for limit trials; those that run are ended with the program. */
export function openTrialDesk(parts: TrialDeskParts, closing: ClosingStack): ValueProvider {
  const desk = new RunnerTrialDesk(parts);
  closing.add(() => desk.stop());
  return { provide: TRIAL_DESK, useValue: desk };
}
