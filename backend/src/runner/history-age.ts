import { unreachable } from '@ebbline/shared/errors/unreachable';
import type { Clock } from '../ports/clock';
import type { HistoryAge } from '../ports/history-store';
import { SteadyClock } from './steady-clock';
import type { TickClock } from './tick-clock';

/**
 * By which time history is removed for its age, asked before each upkeep. The time in force is anchored to the clock of the machine at
 * the start, and stays wrong where that was; so the machine's has to have gone on evenly, and to agree that a row is old. The source
 * clock is moved by messages of which nothing may be kept: the newest row that is has to agree there.
 */
export function historyAge(tickClock: TickClock, clock: Clock): () => HistoryAge {
  const steady = new SteadyClock(clock);
  return () => {
    switch (tickClock.kind) {
      case 'wall': {
        const atMs = steady.look() ? Math.min(tickClock.nowMs(), clock.wallMs()) : Number.NEGATIVE_INFINITY;
        return { atMs, atMostNewest: false };
      }
      case 'source':
        return { atMs: tickClock.nowMs(), atMostNewest: true };
      default:
        return unreachable(tickClock.kind);
    }
  };
}
