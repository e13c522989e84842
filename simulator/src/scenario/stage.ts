import type { Failure, Result } from '@ebbline/shared/errors/result';
import type { SimulatedMessage } from '../payload/messages';
import type { CommandRefusal } from './command';
import type { SiteEvents } from './site-events';
import type { UnitSimulation } from './unit-simulation';

export type CommandFault =
  CommandRefusal | Failure<'FAULT_NOT_ACTIVE' | 'FAULT_ALREADY_ACTIVE' | 'COMMAND_POINT' | 'OPERATION_NOT_NOW'>;

/** What a command may reach. */
export interface Stage {
  readonly units: readonly UnitSimulation[];
  readonly events: SiteEvents;
  readonly nowS: number;
  /** Messages of people beside the gateways', told with the next slot. */
  say(messages: (sourceMs: number) => SimulatedMessage[]): void;
}

export type Executed = Result<null, CommandFault>;
