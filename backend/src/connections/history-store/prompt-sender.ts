import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import { oldestOf, type RowsSender } from './rows-sender';

export interface PromptSenderOptions {
  /** Takes rows in the order in which it is called; rejects where they are given up. */
  readonly send: (rows: HistoryRows) => Promise<void>;
  /** Code of the fault by which a receiver says that it died, whatever became of the rows: they are sent again. */
  readonly diedCode: string;
}

/** Rows that a receiver held when it died so often are taken for the cause of it. */
const mostTries = 3;

/**
 * Hands rows on at once, all that come, and keeps them until they are confirmed: for a receiver that itself puts them in order,
 * bounds what waits and lays it aside.
 */
export class PromptSender implements RowsSender {
  private readonly unconfirmed = new Map<HistoryRows, Promise<void>>();
  private rowsLost = 0;
  private fault: string | null = null;
  private closed = false;

  constructor(private readonly options: PromptSenderOptions) {}

  get rowsQueued(): number {
    return [...this.unconfirmed.keys()].reduce((sum, { count }) => sum + count, 0);
  }

  get oldestMs(): number {
    return Math.min(Infinity, ...[...this.unconfirmed.keys()].map(oldestOf));
  }

  get troubles(): readonly string[] {
    const lost = this.rowsLost === 0 ? [] : [`${this.rowsLost} rows lost since the start`];
    return this.fault === null ? lost : [this.fault, ...lost];
  }

  get well(): boolean {
    return this.fault === null;
  }

  write(rows: HistoryRows): Promise<void> {
    if (this.closed) return Promise.reject(new CodedError('HISTORY_CLOSED', 'the history store is closed'));
    const kept = this.send(rows).finally(() => this.unconfirmed.delete(rows));
    this.unconfirmed.set(rows, kept);
    return kept;
  }

  async flush(): Promise<void> {
    await Promise.allSettled(this.unconfirmed.values());
  }

  /** Waits for nothing: what the receiver has, it confirms or gives up as it closes itself. */
  close(): Promise<void> {
    this.closed = true;
    return Promise.resolve();
  }

  private async send(rows: HistoryRows): Promise<void> {
    for (let tries = 1; ; tries += 1) {
      try {
        await this.options.send(rows);
        this.fault = null;
        return;
      } catch (fault) {
        this.fault = fault instanceof Error ? fault.message : String(fault);
        const died = fault instanceof CodedError && fault.code === this.options.diedCode;
        if (died && tries < mostTries && !this.closed) continue;
        // The receiver tells of what it gave up; of what died with it nobody else knows.
        if (died) this.rowsLost += rows.count;
        else this.fault = null;
        throw fault;
      }
    }
  }
}
