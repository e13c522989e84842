/**
 * Whether the water of a loop rises and keeps rising, by steps of five minutes. The rise of a step is the median of the newest seven:
 * air that pushes water up, water that runs back after a stop, and a bucket that nobody metered, each touch three steps at
 * most and count for nothing, while what runs in all the time counts in full, be it a few litres a day. Columns by unit; a loop has
 * its cells at its first unit. Written in place.
 */
export interface LoopWaterMemory {
  /** Step that is being filled, its sum and samples; NaN before the first sample. */
  readonly step: Float64Array;
  readonly sum: Float64Array;
  readonly samples: Float64Array;
  /** Mean of the last closed step, m³; NaN where it is not known. */
  readonly lastMean: Float64Array;
  /** Metered top-up of so far, m³: it stood in no tank before, and explains itself. */
  readonly toppedUp: Float64Array;
  readonly lookedMs: Float64Array;
  /** Rises of the last steps, m³, `steps` cells a unit; NaN before. */
  readonly rises: Float64Array;
  /** What ran in since the rise began, m³; NaN until that many steps are known. */
  readonly gained: Float64Array;
  /** What ran in within about the last hour, m³. */
  readonly ofHour: Float64Array;
  /** Steps that were judged. */
  readonly judged: Float64Array;
  readonly sinceMs: Float64Array;
  /** Conductivity of the water when the rise began, S/m; NaN where it was not known. */
  readonly conductivityThen: Float64Array;
}

/** What is known of a loop now; NaN: not known. */
export interface LoopWaterNow {
  /** In all tanks, m³. */
  readonly waterM3: number;
  /** What the meters of all units say, m³/s. */
  readonly topUpM3PerS: number;
  /** S/m. */
  readonly conductivity: number;
}

const steps = 7;
const stepMs = 5 * 60_000;
/** A rise of days shows, one of weeks does not; what has ended is forgotten sooner. Own rule. */
const forgetMs = 7 * 24 * 3600_000;
const forgetEndedMs = 12 * 3600_000;
const hourMs = 3600_000;
/** After a longer gap nobody knows what the meter did meanwhile. */
const longestLookMs = stepMs;

export function createLoopWaterMemory(units: number): LoopWaterMemory {
  const unknown = (cells = 1): Float64Array => new Float64Array(units * cells).fill(Number.NaN);
  return {
    step: unknown(),
    sum: new Float64Array(units),
    samples: new Float64Array(units),
    lastMean: unknown(),
    toppedUp: new Float64Array(units),
    lookedMs: unknown(),
    rises: unknown(steps),
    gained: unknown(),
    ofHour: unknown(),
    judged: new Float64Array(units),
    sinceMs: unknown(),
    conductivityThen: unknown(),
  };
}

/** Takes what is known at a time. */
export function followLoopWater(memory: LoopWaterMemory, at: number, now: LoopWaterNow, nowMs: number): void {
  const { lookedMs, samples, step, sum, toppedUp } = memory;
  const elapsedMs = nowMs - (lookedMs[at] as number);
  lookedMs[at] = nowMs;
  if (elapsedMs > 0 && elapsedMs <= longestLookMs)
    toppedUp[at] = (toppedUp[at] as number) + (now.topUpM3PerS * elapsedMs) / 1000;
  const next = Math.floor(nowMs / stepMs);
  if (next !== step[at]) closeStep(memory, at, next, now.conductivity);
  if (Number.isNaN(now.waterM3)) return;
  sum[at] = (sum[at] as number) + now.waterM3 - (toppedUp[at] as number);
  samples[at] = (samples[at] as number) + 1;
}

function closeStep(memory: LoopWaterMemory, at: number, next: number, conductivity: number): void {
  const { lastMean, rises, samples, step, sum } = memory;
  const mean = (sum[at] as number) / (samples[at] as number);
  const follows = next === (step[at] as number) + 1;
  const rise = mean - (lastMean[at] as number);
  if (follows && !Number.isNaN(rise)) {
    rises.copyWithin(at * steps, at * steps + 1, (at + 1) * steps);
    rises[(at + 1) * steps - 1] = rise;
    judgeStep(memory, at, next * stepMs);
    if (memory.sinceMs[at] === next * stepMs) memory.conductivityThen[at] = conductivity;
  }
  // A step of which nothing is known, or that is over for long, is no step to compare with.
  lastMean[at] = follows ? mean : Number.NaN;
  step[at] = next;
  sum[at] = 0;
  samples[at] = 0;
}

function judgeStep({ gained, judged, ofHour, rises, sinceMs }: LoopWaterMemory, at: number, nowMs: number): void {
  const rise = median(rises.subarray(at * steps, (at + 1) * steps));
  if (Number.isNaN(rise)) return;
  judged[at] = (judged[at] as number) + 1;
  const known = (value: number): number => (Number.isNaN(value) ? 0 : value);
  const hour = known(ofHour[at] as number) * (1 - stepMs / hourMs) + rise;
  ofHour[at] = hour;
  const forget = hour > 0 ? forgetMs : forgetEndedMs;
  gained[at] = Math.max(0, known(gained[at] as number) * (1 - stepMs / forget) + rise);
  if (!(gained[at] > 0) || Number.isNaN(sinceMs[at])) sinceMs[at] = nowMs;
}

/** NaN where one is. */
function median(values: Float64Array): number {
  const sorted = Float64Array.from(values).sort();
  return Number.isNaN(sorted[sorted.length - 1]) ? Number.NaN : (sorted[(sorted.length - 1) / 2] as number);
}
