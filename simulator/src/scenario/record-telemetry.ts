import type { SimulatedMessage } from '../payload/messages';
import type { FleetUnit } from './demo-fleet';
import { FleetSimulation } from './fleet-simulation';
import type { SettledPlants } from './unit-simulation';

/** A command and the second at which it is given. */
export interface ScheduledCommand {
  readonly atS: number;
  readonly command: Readonly<Record<string, unknown>>;
}

export interface Recording {
  readonly seed: number;
  readonly startMs: number;
  /** Default: the whole demo fleet. */
  readonly units?: readonly FleetUnit[];
  readonly schedule?: readonly ScheduledCommand[];
  readonly seconds: number;
  /** From recordings of the same seed and start. */
  readonly settled?: SettledPlants;
}

/**
 * What the demo site would send, message by message, without a broker and as fast as it can be computed:
 * the same recording gives the same messages. Throws where a scheduled command is refused.
 */
export function* recordTelemetry(recording: Recording): Generator<SimulatedMessage> {
  const { seed, startMs, units, seconds, settled } = recording;
  const fleet = new FleetSimulation({ seed, startMs, ...(units ? { units } : {}), ...(settled ? { settled } : {}) });
  const schedule = [...(recording.schedule ?? [])].sort((a, b) => a.atS - b.atS);
  yield* fleet.firstMessages();
  while (fleet.nextMs < startMs + 1000 * seconds) {
    while (schedule[0] && fleet.nextMs >= startMs + 1000 * schedule[0].atS) {
      const given = fleet.command(JSON.stringify(schedule[0].command));
      if (!given.ok) throw new RangeError(`scheduled command refused: ${given.fault.code}: ${given.fault.message}`);
      schedule.shift();
    }
    yield* fleet.next();
  }
}
