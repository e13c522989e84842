import type { HistoryRows } from '../evaluation/pipeline/history-rows';

/** Which columns a holder's rows have, in the slot order of that holder. */
export interface HistoryLayout {
  readonly holders: readonly { readonly id: string; readonly columns: readonly HistoryColumn[] }[];
}

/** A stable key: never renamed or reused. A changed unit of measure is another key. */
export interface HistoryColumn {
  readonly point: string;
  readonly unitOfMeasure: string;
}

export interface HistoryQuery {
  readonly holder: string;
  readonly point: string;
  readonly unitOfMeasure: string;
  /** Half-open [fromMs, toMs). */
  readonly fromMs: number;
  readonly toMs: number;
  readonly buckets: number;
}

/** Bucket i covers [startMs[i], startMs[i] + bucketMs); NaN where nothing was measured in it. */
export interface HistoryBuckets {
  readonly bucketMs: number;
  readonly resolution: 'second' | 'minute';
  readonly startMs: Float64Array;
  readonly min: Float64Array;
  readonly mean: Float64Array;
  readonly max: Float64Array;
  readonly count: Float64Array;
}

/** Columns of one holder, second by second. */
export interface SecondsQuery {
  readonly holder: string;
  readonly columns: readonly HistoryColumn[];
  /** Half-open [fromMs, toMs), whole seconds, at most a day. */
  readonly fromMs: number;
  readonly toMs: number;
}

/** The same period of several holders, each with columns of its own. */
export interface TogetherQuery extends Pick<SecondsQuery, 'fromMs' | 'toMs'> {
  readonly holders: readonly Pick<SecondsQuery, 'holder' | 'columns'>[];
  /** Only the first so many ms of each minute are looked at: a store may leave out the rest. */
  readonly ofEachMinuteMs?: number;
}

/** One whole minute of several holders, each with columns of its own. */
export interface MinuteQuery extends Pick<TogetherQuery, 'holders'> {
  /** Its begin, a whole minute. */
  readonly minuteMs: number;
}

/** Figures of one minute of a holder, a place a column as asked for; NaN and a count of 0 where nothing was measured in it. */
export type HistoryMinute = Pick<HistoryBuckets, 'min' | 'mean' | 'max' | 'count'>;

/** Place i of each column is the second fromMs + i · 1000. */
export interface HistorySeconds {
  readonly fromMs: number;
  readonly count: number;
  /** As the columns were asked for; NaN where nothing was measured in that second, or bad. */
  readonly values: readonly Float64Array[];
  /** 0 nothing, 1 good, 2 uncertain, 3 bad. */
  readonly quality: readonly Uint8Array[];
  /** Of before this only minutes are left; `read` has them. −Infinity where nothing was thrown away yet. */
  readonly minutesBeforeMs: number;
}

export interface HistoryHealth {
  /** Of writes alone: a fault of `maintain` is its caller's to tell, and rows are kept all the same. */
  readonly state: 'ok' | 'failing';
  readonly message: string | null;
  readonly rowsQueued: number;
  readonly bytesKept: number | null;
  /** Rows that wait on the disk while their store is away; null or absent where none do. */
  readonly putAside?: PutAside | null;
  /** What could not be kept since the start, in words; each stays told. */
  readonly losses?: readonly string[];
  /** What was written once and can't be read any more, for a person; absent or null where nothing is known of. */
  readonly damaged?: string | null;
}

export interface PutAside {
  readonly rows: number;
  readonly bytes: number;
  readonly limitBytes: number;
  /** No row is older. */
  readonly sinceMs: number;
}

/** By which time rows are too old to be kept. */
export interface HistoryAge {
  /** −Infinity: nothing is removed for its age. */
  readonly atMs: number;
  /** The newest row kept has to make others too old as well. */
  readonly atMostNewest: boolean;
}

/** One port for the embedded store and InfluxDB; one contract suite holds both to it. */
export interface HistoryStore {
  /** Called at start and whenever the site is reloaded, before rows in the new layout come. */
  useLayout(layout: HistoryLayout): Promise<void>;
  /** Resolves once the rows are committed: they survive a kill from then on. Rows are handed over. */
  write(rows: HistoryRows): Promise<void>;
  read(query: HistoryQuery): Promise<HistoryBuckets>;
  /** Seconds as they were written, for what judges them anew; none where only minutes are left. */
  readSeconds(query: SecondsQuery): Promise<HistorySeconds>;
  /** The same of each of several holders, in their order, at a fraction of what they cost one by one. */
  readTogether(query: TogetherQuery): Promise<readonly HistorySeconds[]>;
  /** A minute as it is kept when its seconds are gone, of several holders in their order; it may be empty while they are there. */
  readMinute(query: MinuteQuery): Promise<readonly HistoryMinute[]>;
  /**
   * Applies retention and seals what is old enough; called every few minutes with the tick time. `age`: by what rows are too old, where
   * the store itself removes them; left out, by `nowMs`.
   */
  maintain(nowMs: number, age?: HistoryAge): Promise<void>;
  health(): HistoryHealth;
  /** Where rows are put aside while the store is away: no row that it does not have yet is older. Infinity where it has all. */
  waitingFromMs?(): number;
  close(): Promise<void>;
}

export const HISTORY_STORE = Symbol('HistoryStore');
