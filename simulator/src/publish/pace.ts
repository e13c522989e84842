import type { FleetSimulation } from '../scenario/fleet-simulation';

/** How far behind the wall the simulator may fall before it gives up the time in between, ms. */
const mostBehindMs = 3000;
/** Longest stretch of computing without letting messages out, ms. */
const stretchMs = 30;

export interface WallClock {
  /** Monotonic, ms. */
  now(): number;
}

/** Keeps the fleet's time beside the wall's, `speed` times as fast. */
export class Pace {
  private readonly firstMs: number;

  constructor(
    private readonly fleet: FleetSimulation,
    private readonly speed: number,
    private readonly clock: WallClock,
    /** When by that clock the fleet's first slot is due. */
    private originMs: number = clock.now(),
  ) {
    this.firstMs = fleet.nextMs;
  }

  /** Runs every slot that is due while `takes` says that what it says can go out, and hands that out. */
  runDue(publish: (messages: ReturnType<FleetSimulation['next']>) => void, takes: () => boolean = () => true): void {
    const begun = this.clock.now();
    while (this.behindMs() >= 0 && this.clock.now() - begun < stretchMs && takes()) publish(this.fleet.next());
    const behind = this.behindMs();
    if (behind < mostBehindMs * this.speed) return;
    // At real speed source times stay those of the wall, so seconds are left out; faster, time just runs slower.
    if (this.speed === 1) this.fleet.skipSeconds(Math.floor(behind / 1000));
    else this.originMs += behind / this.speed;
  }

  /** Source ms between what is due and what was computed. */
  private behindMs(): number {
    return this.firstMs + (this.clock.now() - this.originMs) * this.speed - this.fleet.nextMs;
  }
}
