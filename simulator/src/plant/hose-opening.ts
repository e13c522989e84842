/** The hose of one server lies open on the return side of its plates. */
export interface HoseOpening {
  /** Bore that limits the air into the return, m. */
  readonly boreM: number;
  /** The inlet check valve does not close: air also goes back through the restrictor. */
  readonly checkValveStuckOpen: boolean;
}
