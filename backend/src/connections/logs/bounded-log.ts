import type { Clock } from '../../ports/clock';
import type { LogEntry, LogLevel, ProgramLog } from '../../ports/program-log';
import type { Ticker } from '../../ports/ticker';
import { logLine, type LogForm, type WrittenEntry } from './log-line';

/** Lines of one code in a minute; what comes above them is counted and told in one line at its end. */
export const LINES_A_MINUTE = 10;
const MINUTE_MS = 60_000;
/** Codes are ours and few; should a mistake make many of them, memory stays bounded all the same. */
const MOST_CODES = 200;

export interface LogPlace {
  readonly form: LogForm;
  /** Takes one line; a sink that is full or gone must not throw. */
  readonly print: (line: string, level: LogLevel) => void;
  readonly hide: (line: string) => string;
}

interface OfMinute {
  readonly entry: Pick<LogEntry, 'level' | 'room' | 'code'>;
  written: number;
  heldBack: number;
}

/** Writes lines, bounded whatever happens: of each code the first few of a minute, then one that says how many more. */
export class BoundedLog implements ProgramLog {
  lines = 0;
  heldBack = 0;
  private readonly codes = new Map<string, OfMinute>();
  private readonly turning: { stop(): void };

  constructor(
    private readonly place: LogPlace,
    private readonly clock: Clock,
    ticker: Ticker,
  ) {
    this.turning = ticker.every(MINUTE_MS, () => this.turnMinute());
  }

  write(entry: LogEntry): void {
    const counted = this.counted(entry);
    if (counted.written >= LINES_A_MINUTE) {
      counted.heldBack += 1;
      this.heldBack += 1;
      return;
    }
    counted.written += 1;
    const { level, room, code, message, counts } = entry;
    this.print({
      wallMs: this.clock.wallMs(),
      level,
      room,
      code,
      message: message(),
      ...(counts === undefined ? {} : { counts }),
    });
  }

  /** Tells what was held back, and begins anew. */
  turnMinute(): void {
    for (const { entry, heldBack } of this.codes.values()) {
      if (heldBack === 0) continue;
      const message = `and ${heldBack.toLocaleString('en-US')} more like it`;
      this.print({ wallMs: this.clock.wallMs(), ...entry, message, counts: { more: heldBack } });
    }
    this.codes.clear();
  }

  stop(): void {
    this.turning.stop();
    this.turnMinute();
  }

  private counted({ level, room, code }: LogEntry): OfMinute {
    const key = `${room} ${code}`;
    const known = this.codes.get(key);
    if (known !== undefined) return known;
    const full = this.codes.size >= MOST_CODES;
    const fresh = {
      entry: full ? { level, room: 'logs', code: 'OTHER' } : { level, room, code },
      written: 0,
      heldBack: 0,
    };
    const other = full ? this.codes.get('logs OTHER') : undefined;
    if (other !== undefined) return other;
    this.codes.set(full ? 'logs OTHER' : key, fresh);
    return fresh;
  }

  private print(entry: WrittenEntry): void {
    this.lines += 1;
    const { form, hide, print } = this.place;
    // Before the form as well: it changes what it escapes, and a secret would not be known again.
    print(hide(logLine(form, { ...entry, message: hide(entry.message) })), entry.level);
  }
}
