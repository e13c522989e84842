import type { DemoState } from '@ebbline/shared/contract/demo-faults';
import type { Result } from '@ebbline/shared/errors/result';
import { requestOf } from './command';
import type { CommandFault } from './stage';
import type { FleetSimulation } from './fleet-simulation';

/** So much of a refused command is said back. */
const longestEcho = 500;

/** What was thought of the newest command. `request`: the sender's mark on it. */
export interface Answer {
  readonly request: string | null;
  readonly accepted: boolean;
  readonly code?: string;
  readonly message?: string;
}

/** The one document on the state's topic. */
export type ToldState = DemoState & { readonly answer: Answer | null };

/** What stands on the state's topic once the simulator is gone. */
export const goneState: ToldState = { running: false, units: [], kinds: [], active: [], refused: null, answer: null };

/** Tells the state when it changed: at the start, after each command, and when something ends by itself. */
export class StateTeller {
  private told = '';

  constructor(
    private readonly fleet: FleetSimulation,
    private readonly tell: (state: ToldState) => void,
  ) {}

  /** After a command, done or refused. */
  answer(command: string, outcome: Result<unknown, CommandFault>): void {
    const request = requestOf(command);
    if (outcome.ok) this.say(null, { request, accepted: true });
    else {
      const refused = { command: command.slice(0, longestEcho), ...outcome.fault };
      this.say(refused, { request, accepted: false, ...outcome.fault });
    }
  }

  /** Now and then: tells only what nobody commanded. */
  look(): void {
    if (this.told !== changesOf(this.fleet.active())) this.say(null, null);
  }

  /** After the line was lost: the broker may have kept nothing. */
  again(): void {
    this.told = '';
  }

  private say(refused: DemoState['refused'], answer: Answer | null): void {
    const { kinds, units } = this.fleet.commandable;
    const active = this.fleet.active();
    this.told = changesOf(active);
    this.tell({
      running: true,
      units: units.map(({ id, branches }) => ({ id, branches: [...branches] })),
      kinds: kinds.map((kind) => ({
        ...kind,
        units: [...kind.units],
        choices: kind.choices.map(({ key, title, values, usual }) => ({ key, title, values: [...values], usual })),
      })),
      active,
      refused,
      answer,
    });
  }
}

/** What counts as a change: not the passing of time, nor how far a fault has come. */
const changesOf = (active: DemoState['active']): string =>
  JSON.stringify(active.map(({ id, unit, branch, repaired, keys }) => [id, unit, branch, repaired, keys]));
