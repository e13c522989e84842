import { CodedError } from '../errors/coded-error';
import type { Clock } from './clock';

/** A clock that a test or a replay drives. Refuses to go back. */
export class ManualClock implements Clock {
  private elapsedMs = 0;

  constructor(private readonly startWallMs: number) {}

  wallMs(): number {
    return this.startWallMs + this.elapsedMs;
  }

  monotonicMs(): number {
    return this.elapsedMs;
  }

  /** Moves both times forward by `ms` (≥ 0). */
  advance(ms: number): void {
    if (!(ms >= 0)) throw new CodedError('CLOCK_BACKWARD', `a manual clock moves forward only, not by ${ms} ms`);
    this.elapsedMs += ms;
  }
}
