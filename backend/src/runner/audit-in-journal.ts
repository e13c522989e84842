import { CodedError } from '@ebbline/shared/errors/coded-error';
import { BoundedAudit } from '../access/bounded-audit';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { Audit, AuditCause, AuditEntry } from '../ports/audit';
import type { Clock } from '../ports/clock';
import type { Ticker } from '../ports/ticker';

/** What anyone may cause without being let in; it is written one by one up to a bound, and then counted. */
const ofTheMany: ReadonlySet<AuditCause> = new Set(['signInRefused', 'signInLockedOut', 'actionRefused']);

/** So many sums at most wait for a journal that can't be written. */
const mostUnwritten = 2000;

/** How often it is looked whether sums are due, ms. */
const lookEveryMs = 10_000;

/** The audit as rows of the alarm journal. */
export class AuditInJournal implements Audit {
  readonly #journal: Pick<AlarmJournal, 'appendAudit'>;
  readonly #clock: Clock;
  readonly #bounded = new BoundedAudit();
  #unwritten: AuditEntry[] = [];

  constructor(journal: Pick<AlarmJournal, 'appendAudit'>, clock: Clock) {
    this.#journal = journal;
    this.#clock = clock;
  }

  write(entry: AuditEntry): boolean {
    this.#sumUp(false);
    if (ofTheMany.has(entry.cause) && !this.#bounded.admits(entry, this.#clock.monotonicMs())) return true;
    return this.#append([entry]);
  }

  /** Sums up by itself, until `stop`, which also writes what is left. */
  follow(ticker: Ticker): { stop(): void } {
    const ticking = ticker.every(lookEveryMs, () => this.#sumUp(false));
    return {
      stop: () => {
        ticking.stop();
        this.#sumUp(true);
      },
    };
  }

  /** Sums that the journal refuses are kept for the next time. */
  #sumUp(atOnce: boolean): void {
    const due = this.#bounded.due(this.#clock.monotonicMs(), atOnce).map(({ station, cause, left }): AuditEntry => {
      const reason = `${left} more within a minute like the last ones here (${cause})`;
      return { cause: 'refusalsCounted', actor: null, station, reason };
    });
    this.#unwritten = [...this.#unwritten, ...due].slice(-mostUnwritten);
    if (this.#unwritten.length > 0 && this.#append(this.#unwritten)) this.#unwritten = [];
  }

  #append(entries: readonly AuditEntry[]): boolean {
    try {
      this.#journal.appendAudit(entries, this.#clock.wallMs());
      return true;
    } catch (fault) {
      // The journal has told its own trouble; whoever asked is told that nothing is done without a record.
      if (fault instanceof CodedError) return false;
      throw fault;
    }
  }
}
