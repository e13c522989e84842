import type { CompiledSite } from '../site/compiled-site';
import { badBits, reasonBit, uncertainBits } from '../slots/quality-reasons';
import type { HistoryRows } from './history-rows';

/**
 * A second stays open so long after its end, for samples that come a little late; later ones make a row of their own, which merges.
 * With the half second between commits, a kill costs two seconds at most of what is not delivered again.
 */
const openMs = 500;
/** So many seconds a holder may be open; the oldest is closed early: late floods keep memory flat. */
const mostOpen = 6;

const quality = { nothing: 0, good: 1, uncertain: 2, bad: 3 } as const;
/** Reasons with which there is nothing to write: the point was never worked out. */
const absentBits = reasonBit.notReceived | reasonBit.notApplicable | reasonBit.notSet;

interface OpenRow {
  readonly holder: number;
  secondMs: number;
  readonly values: Float64Array;
  readonly quality: Uint8Array;
  /** Source time of each value, to keep the last of the second. */
  readonly atMs: Float64Array;
}

/**
 * Rows of history in the making. A measured value belongs to the second of its source time; of several in one second
 * the last wins; none is ever held over. A second that was handed out already comes again as a partial row.
 */
export class HistoryBuilder {
  private readonly open: OpenRow[][];
  private readonly free: OpenRow[][];
  private ready: OpenRow[] = [];
  private row: OpenRow | null = null;
  private rowHolder = -1;
  private rowSecondMs = Number.NaN;

  constructor(private readonly site: CompiledSite) {
    this.open = site.holders.map(() => []);
    this.free = site.holders.map(() => []);
  }

  /** A bad value is kept as NaN with its quality. Without a source time there is no second to put it in. */
  put(slot: number, sourceMs: number, value: number, reasons: number): void {
    if (Number.isNaN(sourceMs) || (reasons & absentBits) !== 0) return;
    const holder = this.site.slots.holder[slot] as number;
    this.openRow(holder, sourceMs);
    this.putInRow(slot - (this.site.holders[holder]?.firstSlot ?? 0), sourceMs, value, reasons);
  }

  /** The row that `putInRow` writes to from now on: of many values of one holder and second it is looked up once. */
  openRow(holder: number, sourceMs: number): void {
    this.rowHolder = holder;
    this.rowSecondMs = Math.floor(sourceMs / 1000) * 1000;
    this.row = null;
  }

  /** As `put`, into a column of the row that `openRow` named; a row without any value is never made. */
  putInRow(column: number, sourceMs: number, value: number, reasons: number): void {
    if ((reasons & absentBits) !== 0) return;
    const row = (this.row ??= this.rowOf(this.rowHolder, this.rowSecondMs));
    if ((row.atMs[column] as number) > sourceMs) return;
    row.atMs[column] = sourceMs;
    const bad = (reasons & badBits) !== 0 || Number.isNaN(value);
    row.values[column] = bad ? Number.NaN : value;
    row.quality[column] = bad ? quality.bad : (reasons & uncertainBits) !== 0 ? quality.uncertain : quality.good;
  }

  /** Complete seconds, oldest first by holder; all of them on `everything`. Null where there are none. */
  drain(nowMs: number, everything: boolean): HistoryRows | null {
    for (let holder = 0; holder < this.open.length; holder += 1) this.close(holder, nowMs, everything);
    if (this.ready.length === 0) return null;
    const rows = this.pack(this.ready);
    for (const row of this.ready) this.release(row);
    this.ready = [];
    return rows;
  }

  private close(holder: number, nowMs: number, everything: boolean): void {
    const rows = this.open[holder] as OpenRow[];
    let kept = 0;
    for (const row of rows) {
      if (everything || row.secondMs + 1000 + openMs <= nowMs) this.ready.push(row);
      else rows[kept++] = row;
    }
    rows.length = kept;
  }

  private rowOf(holder: number, secondMs: number): OpenRow {
    const rows = this.open[holder] as OpenRow[];
    for (let i = rows.length - 1; i >= 0; i -= 1) {
      const row = rows[i] as OpenRow;
      if (row.secondMs === secondMs) return row;
    }
    if (rows.length >= mostOpen) this.ready.push(rows.shift() as OpenRow);
    const row = this.take(holder, secondMs);
    let place = rows.length;
    while (place > 0 && (rows[place - 1] as OpenRow).secondMs > secondMs) place -= 1;
    rows.splice(place, 0, row);
    return row;
  }

  private take(holder: number, secondMs: number): OpenRow {
    const used = this.free[holder]?.pop();
    if (used !== undefined) {
      used.secondMs = secondMs;
      return used;
    }
    const columns = this.site.holders[holder]?.slotCount ?? 0;
    return {
      holder,
      secondMs,
      values: new Float64Array(columns).fill(Number.NaN),
      quality: new Uint8Array(columns),
      atMs: new Float64Array(columns).fill(Number.NEGATIVE_INFINITY),
    };
  }

  private release(row: OpenRow): void {
    const free = this.free[row.holder] as OpenRow[];
    if (free.length >= mostOpen) return;
    row.values.fill(Number.NaN);
    row.quality.fill(quality.nothing);
    row.atMs.fill(Number.NEGATIVE_INFINITY);
    free.push(row);
  }

  private pack(rows: readonly OpenRow[]): HistoryRows {
    const width = rows.reduce((sum, row) => sum + row.values.length, 0);
    const packed = {
      count: rows.length,
      holder: new Int32Array(rows.length),
      secondMs: new Float64Array(rows.length),
      offset: new Int32Array(rows.length),
      values: new Float64Array(width),
      quality: new Uint8Array(width),
    };
    let offset = 0;
    rows.forEach((row, i) => {
      packed.holder[i] = row.holder;
      packed.secondMs[i] = row.secondMs;
      packed.offset[i] = offset;
      packed.values.set(row.values, offset);
      packed.quality.set(row.quality, offset);
      offset += row.values.length;
    });
    return packed;
  }
}
