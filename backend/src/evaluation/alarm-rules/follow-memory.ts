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

/**
 * How a pressure sensor, against another one on the same water, goes with the barometer: a fading line through means of a
 * minute, one for each sensor. Columns by unit, so many cells for each as it has such sensors.
 */
export class FollowMemory {
  private readonly minute: Float64Array;
  private readonly count: Float64Array;
  private readonly sumX: Float64Array;
  private readonly sumY: Float64Array;
  private readonly weight: Float64Array;
  private readonly meanX: Float64Array;
  private readonly meanY: Float64Array;
  private readonly xx: Float64Array;
  private readonly xy: Float64Array;
  private readonly yy: Float64Array;

  constructor(sensors: number) {
    const zeros = (): Float64Array => new Float64Array(sensors);
    this.minute = zeros().fill(Number.NaN);
    this.count = zeros();
    this.sumX = zeros();
    this.sumY = zeros();
    this.weight = zeros();
    this.meanX = zeros();
    this.meanY = zeros();
    this.xx = zeros();
    this.xy = zeros();
    this.yy = zeros();
  }

  /** `barometerPa` and what the sensor tells above the other one, Pa; NaN of either is no sample. */
  push(sensor: number, nowMs: number, barometerPa: number, differencePa: number): void {
    const minute = Math.floor(nowMs / 60_000);
    if (this.minute[sensor] !== minute) {
      this.close(sensor);
      this.minute[sensor] = minute;
      this.count[sensor] = 0;
      this.sumX[sensor] = 0;
      this.sumY[sensor] = 0;
    }
    if (Number.isNaN(barometerPa + differencePa)) return;
    this.count[sensor] = at(this.count, sensor) + 1;
    this.sumX[sensor] = at(this.sumX, sensor) + barometerPa;
    this.sumY[sensor] = at(this.sumY, sensor) + differencePa;
  }

  look(sensor: number, into: Following): Following {
    const weight = at(this.weight, sensor);
    const xx = at(this.xx, sensor);
    into.minutes = weight;
    into.barometerPa = Math.sqrt(xx / weight);
    into.slope = at(this.xy, sensor) / xx;
    into.correlation = at(this.xy, sensor) / Math.sqrt(xx * at(this.yy, sensor));
    return into;
  }

  /** West’s update of weighted sums of squares (D. H. D. West 1979, Comm. ACM 22; from memory), with fading weights. */
  private close(sensor: number): void {
    const count = at(this.count, sensor);
    if (count === 0) return;
    const keep = 1 - 1 / memoryMinutes;
    const weight = at(this.weight, sensor) * keep + 1;
    const dx = at(this.sumX, sensor) / count - at(this.meanX, sensor);
    const dy = at(this.sumY, sensor) / count - at(this.meanY, sensor);
    const share = (weight - 1) / weight;
    this.weight[sensor] = weight;
    this.meanX[sensor] = at(this.meanX, sensor) + dx / weight;
    this.meanY[sensor] = at(this.meanY, sensor) + dy / weight;
    this.xx[sensor] = at(this.xx, sensor) * keep + share * dx * dx;
    this.xy[sensor] = at(this.xy, sensor) * keep + share * dx * dy;
    this.yy[sensor] = at(this.yy, sensor) * keep + share * dy * dy;
  }
}

const at = (column: Float64Array, sensor: number): number => column[sensor] as number;
