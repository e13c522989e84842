import type { SimulatedMessage } from '../../simulator/src/payload/messages';
import { FleetSimulation, type FleetSettings } from '../../simulator/src/scenario/fleet-simulation';

/** A story of days, told in a time lapse. */
export interface Lapse {
  /** One reading in so many seconds. */
  readonly everyS: number;
  /** Of these the plants run so many, and stand still for the rest while weather and load go on. */
  readonly runS: number;
  /** So long after the onset; then every second is run. */
  readonly untilS: number;
}

/**
 * What the units would send: one second of each `everyS`, and every second from `untilS` on. A plant's own clocks (ageing,
 * lags of faults) run only while it runs; weather, load and the course of a low follow the time that is told.
 */
export function* lapseTelemetry(
  settings: FleetSettings & { readonly units: readonly unknown[] },
  { everyS, runS, untilS }: Lapse,
  seconds: number,
): Generator<SimulatedMessage> {
  const fleet = new FleetSimulation({
    ...settings,
    onRefused: ({ code, message }) => {
      throw new RangeError(`scheduled command refused: ${code}: ${message}`);
    },
  });
  const aSecond = (): SimulatedMessage[] => settings.units.flatMap(() => fleet.next());
  yield* fleet.firstMessages();
  // Halls speak each fifth second, of one unit a second before it: so that what is told is one of these.
  let second = settings.units.length === 1 ? 4 : 0;
  for (let lead = 0; lead < second; lead += 1) yield* aSecond();
  while (second + everyS <= Math.min(untilS, seconds)) {
    yield* aSecond();
    for (let run = 1; run < runS; run += 1) yield* aSecond().filter(isKept);
    fleet.skipSeconds(everyS - runS);
    second += everyS;
  }
  for (; second < seconds; second += 1) yield* aSecond();
}

/** What is told when it happens; telemetry of a unit is told once a round. */
const isKept = ({ gateway, retain }: SimulatedMessage): boolean => gateway === null || retain;
