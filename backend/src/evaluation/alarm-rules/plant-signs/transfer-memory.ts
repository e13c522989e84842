/** What is known of the tanks now. */
export interface TanksNow {
  /** Bits of the tanks that fill; −1 where one of them is not known. */
  readonly filling: number;
  /** Out of the tanks, m³/s; NaN where not known: then the water of the running transfer is not judged. */
  readonly flowM3PerS: number;
  /** In all tanks together, m³; NaN where not known. */
  readonly heldM3: number;
}

/** Change-overs of alternating tanks, by unit: how much water one transfer carries and how long it takes. */
export interface TransferMemory {
  /** Bits of the tanks that filled at the last look; −1 before the first. */
  readonly filling: Int32Array;
  /** Water that has gone, m³, and time that has passed, ms, since the last change-over; NaN where not known. */
  readonly waterSince: Float64Array;
  readonly timeSince: Float64Array;
  /** The same of one usual transfer. */
  readonly usualWater: Float64Array;
  readonly usualTime: Float64Array;
  /** Water in all tanks together as they change over, m³: usual. */
  readonly usualHeld: Float64Array;
  /** Water of the last whole transfer, m³. */
  readonly lastWater: Float64Array;
  readonly seen: Uint16Array;
  readonly lookedMs: Float64Array;
}

export function createTransferMemory(units: number): TransferMemory {
  const never = (): Float64Array => new Float64Array(units).fill(Number.NaN);
  return {
    filling: new Int32Array(units).fill(-1),
    waterSince: never(),
    timeSince: never(),
    usualWater: never(),
    usualTime: never(),
    usualHeld: never(),
    lastWater: never(),
    seen: new Uint16Array(units),
    lookedMs: never(),
  };
}

/** So many transfers are taken as usual before any is judged. */
export const transfersToLearn = 3;
/** One that is further from the usual one is not learnt. */
const learnWithin = 0.5;
/** The time goes with the flow, which people change. */
const memoryTransfers = 20;
/** Water is the tanks’ own: what drains or fills them within hours must not become usual. A day or so of transfers. Own rule. */
const memoryOfWater = 2000;
/** After a longer time in which the tanks were not seen it is not known what went on in between. */
const longestGapMs = 5000;

/** Once a second. */
export function followTransfers(
  memory: TransferMemory,
  unit: number,
  { filling, flowM3PerS, heldM3 }: TanksNow,
  nowMs: number,
): void {
  if (filling < 0) return;
  const elapsedMs = nowMs - (memory.lookedMs[unit] as number);
  memory.lookedMs[unit] = nowMs;
  const passed = elapsedMs > longestGapMs ? Number.NaN : elapsedMs;
  memory.waterSince[unit] = (memory.waterSince[unit] as number) + (flowM3PerS * passed) / 1000;
  memory.timeSince[unit] = (memory.timeSince[unit] as number) + passed;
  const before = memory.filling[unit] as number;
  memory.filling[unit] = filling;
  // A change-over that nobody saw began no transfer that can be measured: the next one does.
  if (before < 0 || (filling & ~before) === 0 || Number.isNaN(passed)) return;
  const water = memory.waterSince[unit];
  const time = memory.timeSince[unit];
  memory.waterSince[unit] = 0;
  memory.timeSince[unit] = 0;
  memory.lastWater[unit] = water;
  if (!Number.isNaN(water)) learn(memory, unit, { water, time, heldM3 });
}

function learn(memory: TransferMemory, unit: number, found: { water: number; time: number; heldM3: number }): void {
  const { seen, usualHeld, usualTime, usualWater } = memory;
  const before = seen[unit] as number;
  const usual = usualWater[unit] as number;
  if (before >= transfersToLearn && Math.abs(found.water - usual) > learnWithin * usual) return;
  const share = 1 / Math.min(memoryOfWater, before + 1);
  usualWater[unit] = blend(usual, found.water, share);
  usualTime[unit] = blend(usualTime[unit] as number, found.time, Math.max(share, 1 / memoryTransfers));
  if (!Number.isNaN(found.heldM3)) usualHeld[unit] = blend(usualHeld[unit] as number, found.heldM3, share);
  seen[unit] = Math.min(before + 1, 0xffff);
}

const blend = (known: number, found: number, share: number): number =>
  Number.isNaN(known) ? found : known + (found - known) * share;
