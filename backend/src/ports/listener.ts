/** Hears what a broker carries beside the telemetry of the site: without effect on what is judged, and never for long. */
export interface Listener {
  /** Ends what was listened to before. */
  listen(filter: string, hear: (topic: string, payload: Uint8Array) => void): void;
  stop(): Promise<void>;
  /** Why nothing is heard now; null: it is listened, or nobody asked. */
  trouble(): string | null;
}
