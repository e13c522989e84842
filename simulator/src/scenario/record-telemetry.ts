import type { SimulatedMessage } from '../payload/messages';
import type { FleetUnit } from './demo-fleet';
import { FleetSimulation } from './fleet-simulation';
import type { ScheduledCommand } from './schedule';
import type { SettledPlants } from './unit-plant';

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
  const { seconds, ...settings } = recording;
  const fleet = new FleetSimulation({
    ...settings,
    onRefused: ({ code, message }) => {
      throw new RangeError(`scheduled command refused: ${code}: ${message}`);
    },
  });
  yield* fleet.firstMessages();
  while (fleet.nextMs < recording.startMs + 1000 * seconds) yield* fleet.next();
}
