import type { LogLevel } from '../../ports/program-log';

export type LogForm = 'human' | 'json';

export interface WrittenEntry {
  readonly wallMs: number;
  readonly level: LogLevel;
  readonly room: string;
  readonly code: string;
  readonly message: string;
  readonly counts?: Readonly<Record<string, number>>;
}

/** One line: a JSON object (RFC 8259), or words. Control characters of a message never reach a terminal. */
export function logLine(form: LogForm, { wallMs, level, room, code, message, counts }: WrittenEntry): string {
  const time = new Date(wallMs).toISOString();
  if (form === 'json')
    return JSON.stringify({ time, level, room, code, message, ...(counts === undefined ? {} : { counts }) });
  return `${time} ${level} ${room} ${code}: ${oneLine(message)}`;
}

/** A stack keeps its lines, indented; whatever else is not printable becomes a dot. */
const oneLine = (message: string): string => message.replaceAll(/\r?\n/g, '\n  ').replaceAll(/[^\P{Cc}\n]/gu, '.');
