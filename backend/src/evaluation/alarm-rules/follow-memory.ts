/** Means of a minute are compared; what is older than this fades, minutes. Own rule. */
const memoryMinutes = 6 * 60;

/** What a line through the means says. Filled anew by each look. */
export interface Following {
  /** Minutes that count. */
  minutes: number;
  /** Deviation of the barometer within them, Pa. */
  barometerPa: number;
  /** Change of the sensor with a pascal of the barometer, and how well a line holds it. */
  slope: number;
  correlation: number;
}

const Cell = { minute: 0, count: 1, sumX: 2, sumY: 3, weight: 4, meanX: 5, meanY: 6, xx: 7, xy: 8, yy: 9 } as const;
const cellCount = 10;

/**
 * How a pressure sensor, against another one on the same water, goes with the barometer: a fading line through means of a
 * minute, one for each sensor. Columns by unit, so many cells for each as it has such sensors.
 */
export class FollowMemory {
  /** `Cell` by sensor, side by side: each array more is a line of memory more, each second. */
  private readonly cells: Float64Array;

  constructor(sensors: number) {
    this.cells = new Float64Array(sensors * cellCount);
    for (let first = 0; first < this.cells.length; first += cellCount) this.cells[first + Cell.minute] = Number.NaN;
  }

  /** `barometerPa` and what the sensor tells above the other one, Pa; NaN of either is no sample. */
  push(sensor: number, nowMs: number, barometerPa: number, differencePa: number): void {
    const { cells } = this;
    const first = sensor * cellCount;
    const minute = Math.floor(nowMs / 60_000);
    if (cells[first + Cell.minute] !== minute) {
      this.close(first);
      cells[first + Cell.minute] = minute;
      cells[first + Cell.count] = 0;
      cells[first + Cell.sumX] = 0;
      cells[first + Cell.sumY] = 0;
    }
    if (Number.isNaN(barometerPa + differencePa)) return;
    cells[first + Cell.count] = this.at(first, Cell.count) + 1;
    cells[first + Cell.sumX] = this.at(first, Cell.sumX) + barometerPa;
    cells[first + Cell.sumY] = this.at(first, Cell.sumY) + differencePa;
  }

  look(sensor: number, into: Following): Following {
    const first = sensor * cellCount;
    const weight = this.at(first, Cell.weight);
    const xx = this.at(first, Cell.xx);
    into.minutes = weight;
    into.barometerPa = Math.sqrt(xx / weight);
    into.slope = this.at(first, Cell.xy) / xx;
    into.correlation = this.at(first, Cell.xy) / Math.sqrt(xx * this.at(first, Cell.yy));
    return into;
  }

  /** West’s update of weighted sums of squares (D. H. D. West 1979, Comm. ACM 22; from memory), with fading weights. */
  private close(first: number): void {
    const { cells } = this;
    const count = this.at(first, Cell.count);
    if (count === 0) return;
    const keep = 1 - 1 / memoryMinutes;
    const weight = this.at(first, Cell.weight) * keep + 1;
    const dx = this.at(first, Cell.sumX) / count - this.at(first, Cell.meanX);
    const dy = this.at(first, Cell.sumY) / count - this.at(first, Cell.meanY);
    const share = (weight - 1) / weight;
    cells[first + Cell.weight] = weight;
    cells[first + Cell.meanX] = this.at(first, Cell.meanX) + dx / weight;
    cells[first + Cell.meanY] = this.at(first, Cell.meanY) + dy / weight;
    cells[first + Cell.xx] = this.at(first, Cell.xx) * keep + share * dx * dx;
    cells[first + Cell.xy] = this.at(first, Cell.xy) * keep + share * dx * dy;
    cells[first + Cell.yy] = this.at(first, Cell.yy) * keep + share * dy * dy;
  }

  private at(first: number, cell: number): number {
    return this.cells[first + cell] as number;
  }
}
