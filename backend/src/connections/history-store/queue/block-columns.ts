import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';

/** Bytes of a row's place in time and of one value with its quality. */
const rowBytes = 4 + 8;
const valueBytes = 8 + 1;

export const rawBytesOf = (rows: number, values: number): number => rows * rowBytes + values * valueBytes;

/**
 * Rows as columns: holders, seconds, qualities, and the values in eight planes, their lowest bytes first. A plane holds
 * the values point by point, so that equal points of many units stand side by side and the upper bytes repeat. No value loses
 * a bit. Little-endian, as every machine is that Node 20 is built for but one (s390x).
 * @param widths values of a row, by holder
 */
export function toColumns(rows: HistoryRows, widths: readonly number[]): { body: Buffer; values: number } {
  const values = valuesOf(rows, widths);
  const body = Buffer.alloc(rawBytesOf(rows.count, values));
  for (let row = 0; row < rows.count; row++) {
    body.writeInt32LE(rows.holder[row] ?? -1, row * 4);
    body.writeDoubleLE(rows.secondMs[row] ?? NaN, rows.count * 4 + row * 8);
  }
  const qualities = rows.count * rowBytes;
  const planes = qualities + values;
  const one = new Float64Array(1);
  const [words, at] = [new Uint32Array(one.buffer), new Places(rows, widths)];
  for (let i = 0; i < values; i++) {
    const from = at.next();
    body[qualities + i] = rows.quality[from] ?? 0;
    one[0] = rows.values[from] ?? NaN;
    const [low = 0, high = 0] = [words[0], words[1]];
    for (let byte = 0; byte < 4; byte++) {
      body[planes + byte * values + i] = (low >>> (byte * 8)) & 255;
      body[planes + (byte + 4) * values + i] = (high >>> (byte * 8)) & 255;
    }
  }
  return { body, values };
}

/** The rows again; null where the body does not have the length of so many rows of that layout. */
export function fromColumns(body: Buffer, count: number, widths: readonly number[]): HistoryRows | null {
  if (body.length < count * rowBytes) return null;
  const holder = new Int32Array(count);
  const secondMs = new Float64Array(count);
  const offset = new Int32Array(count);
  let values = 0;
  for (let row = 0; row < count; row++) {
    holder[row] = body.readInt32LE(row * 4);
    secondMs[row] = body.readDoubleLE(count * 4 + row * 8);
    offset[row] = values;
    const width = widths[holder[row] as number];
    if (width === undefined) return null;
    values += width;
  }
  if (body.length !== rawBytesOf(count, values)) return null;
  const rows: HistoryRows = {
    count,
    holder,
    secondMs,
    offset,
    values: new Float64Array(values),
    quality: new Uint8Array(values),
  };
  const qualities = count * rowBytes;
  const planes = qualities + values;
  const words = new Uint32Array(rows.values.buffer);
  const at = new Places(rows, widths);
  for (let i = 0; i < values; i++) {
    const to = at.next();
    rows.quality[to] = body[qualities + i] as number;
    let low = 0;
    let high = 0;
    for (let byte = 0; byte < 4; byte++) {
      low |= (body[planes + byte * values + i] as number) << (byte * 8);
      high |= (body[planes + (byte + 4) * values + i] as number) << (byte * 8);
    }
    words[to * 2] = low;
    words[to * 2 + 1] = high;
  }
  return rows;
}

export const valuesOf = (rows: HistoryRows, widths: readonly number[]): number => {
  let values = 0;
  for (let row = 0; row < rows.count; row++) values += widths[rows.holder[row] ?? -1] ?? 0;
  return values;
};

/** Where the values stand, point by point and within a point row by row. */
class Places {
  private column = 0;
  private row = -1;
  private readonly width: Int32Array;

  constructor(
    private readonly rows: HistoryRows,
    widths: readonly number[],
  ) {
    this.width = Int32Array.from({ length: rows.count }, (_, row) => widths[rows.holder[row] ?? -1] ?? 0);
  }

  next(): number {
    do {
      this.row += 1;
      if (this.row === this.rows.count) {
        this.row = 0;
        this.column += 1;
      }
    } while ((this.width[this.row] as number) <= this.column);
    return (this.rows.offset[this.row] as number) + this.column;
  }
}
