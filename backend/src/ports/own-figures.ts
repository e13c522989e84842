/** How many of a run of figures were at most each bound. */
export interface DistributionSoFar {
  readonly bounds: readonly number[];
  cumulative(): readonly number[];
  readonly count: number;
  readonly sum: number;
}

/** Commits of one store since the start. */
export interface WritesSoFar {
  readonly seconds: DistributionSoFar;
  readonly refused: number;
  readonly entries: number;
}

/** What the program has counted of itself since the start; read, never changed, by whoever tells of it. */
export interface OwnFigures {
  readonly ticks: {
    readonly lag: DistributionSoFar;
    readonly duration: DistributionSoFar;
    readonly slice: DistributionSoFar;
  };
  readonly journalWrites: WritesSoFar;
  readonly historyWrites: WritesSoFar;
  readonly requests: {
    readonly seconds: DistributionSoFar;
    rows(): readonly { readonly route: string; readonly statusClass: string; readonly count: number }[];
  };
  readonly feed: { readonly clients: number; readonly framesSent: number; readonly framesSkipped: number };
  readonly log: { readonly lines: number; readonly heldBack: number };
  /** What the embedded broker refused, by what was asked of it; null where another broker is in use. */
  brokerRefused(): Readonly<Record<string, number>> | null;
  /** Of the plant that is watched. */
  site(): SiteFigures;
}

export interface SiteFigures {
  readonly units: number;
  /** Units of which no measured point is fresh. */
  readonly unitsSilent: number;
  readonly alarms: readonly { readonly priority: number; readonly acknowledged: boolean; readonly count: number }[];
  /** Tick time that bounded catch-up left out, s. */
  readonly skippedS: number;
}

export const OWN_FIGURES = Symbol('OwnFigures');
