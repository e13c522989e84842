export type LogLevel = 'info' | 'warning' | 'error';

export interface LogEntry {
  readonly level: LogLevel;
  /** Which part of the program tells it. */
  readonly room: string;
  /** Stable; what is told again and again under one code is told a few times a minute, then counted. */
  readonly code: string;
  /** Made only where it is written. Holds no secret and no payload. */
  readonly message: () => string;
  readonly counts?: Readonly<Record<string, number>>;
}

/** Tells whoever runs the program what happens to it. What happens to the plant stands in the journal. */
export interface ProgramLog {
  write(entry: LogEntry): void;
}
