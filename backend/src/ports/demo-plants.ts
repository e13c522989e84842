import type { DemoCommand, DemoState } from '@ebbline/shared/contract/demo-faults';
import type { Result } from '@ebbline/shared/errors/result';

export interface DemoFault {
  readonly code: 'DEMO_ABSENT' | 'DEMO_SILENT' | 'DEMO_COMMAND_REFUSED';
  readonly message: string;
}

/** The simulated plants of the demo site: what they can be told, and what the simulator says became of it. */
export interface DemoPlants {
  state(): Result<DemoState, DemoFault>;
  /** Resolves once the simulator has answered, or after a few seconds without an answer. */
  command(command: DemoCommand): Promise<Result<DemoState, DemoFault>>;
}

export const DEMO_PLANTS = Symbol('DemoPlants');
