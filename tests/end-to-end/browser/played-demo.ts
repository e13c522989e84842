import type { SimulatedMessage } from '../../../simulator/src/payload/messages';
import { recordTelemetry } from '../../../simulator/src/scenario/record-telemetry';
import type { ScheduledCommand } from '../../../simulator/src/scenario/schedule';
import { type ReplayedBackend, startReplayedBackend } from '../../helpers/replayed-backend';
import { demoFleet } from '../../../simulator/src/scenario/demo-fleet';
import { siteOfUnits } from '../../stories/site-of-units';
import { dataFolder } from '../data-folder';

export const playedFromMs = Date.UTC(2026, 2, 3, 2);

/** The real program on the demo site by the plant's own time, which goes on only as it is played. */
export interface PlayedDemo extends Pick<ReplayedBackend, 'ebbline' | 'stop'> {
  /** Plays up to and with this second from the start; resolves when the program has taken all of it. */
  playTo(second: number): Promise<void>;
  /** Time of the newest second, ISO 8601. */
  now(): string;
}

/** The same plants, weather and work at each run; `schedule`: what happens to them. */
export async function startPlayedDemo(schedule: readonly ScheduledCommand[], seconds: number): Promise<PlayedDemo> {
  const backend = await startReplayedBackend(siteOfUnits(demoFleet.map(({ id }) => id)), await dataFolder());
  const telemetry = recordTelemetry({ seed: 1, startMs: playedFromMs, seconds, schedule });
  let next = telemetry.next();
  let nowMs = playedFromMs;
  function* upTo(lastMs: number): Generator<SimulatedMessage> {
    for (; next.done !== true && next.value.sourceMs <= lastMs; next = telemetry.next()) {
      nowMs = Math.max(nowMs, next.value.sourceMs);
      yield next.value;
    }
  }
  return {
    ebbline: backend.ebbline,
    stop: () => backend.stop(),
    now: () => new Date(nowMs).toISOString(),
    playTo: (second) => backend.play(upTo(playedFromMs + second * 1000 + 999)),
  };
}
