/** What the program has measured of itself; handed in with a tick, since the judge knows no clock and no disk. */
export interface SystemState {
  /** How late slices are judged, the worst of the last second, s. 0 on the source clock, where nothing is due by itself. */
  readonly evaluationLagS: number;
  /** How late the program's own thread comes to its work, the worst of the last second, s. 0 on the source clock. */
  readonly threadDelayS: number;
  /** Why the journal refuses; null where the last write was taken. */
  readonly journalTrouble: string | null;
  /** Changes that the journal has not taken yet. */
  readonly unrecorded: number;
  /** Why history is not written; null where it is. */
  readonly historyTrouble: string | null;
  /** Room on the disk of the data folder, bytes; NaN where the system does not tell. */
  readonly freeBytes: number;
  /** Size of that disk, bytes. */
  readonly diskBytes: number;
}
