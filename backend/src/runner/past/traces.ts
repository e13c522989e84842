import { Origin, type CompiledSite, type Holder } from '../../evaluation/site/compiled-site';
import type { HistoryColumn, HistoryStore } from '../../ports/history-store';

/** A stretch in which something was recorded, [fromMs, toMs). */
export interface Trace {
  readonly fromMs: number;
  readonly toMs: number;
}

/** A pause as long as a value lasts that is told each second is none. ms */
const bridgedMs = 5000;
const minuteMs = 60_000;
/** Of so many units, and of so many points of each, is looked for traces: who runs leaves them at all. */
const unitsAsked = 3;
const pointsAsked = 3;

/** Where anything was recorded of some holders, in order; of where only minutes are kept, by whole minutes. At most a day, whole seconds. */
export async function readTraces(
  store: Pick<HistoryStore, 'read' | 'readSeconds'>,
  site: CompiledSite,
  holders: readonly number[],
  fromMs: number,
  toMs: number,
): Promise<readonly Trace[]> {
  const seen = new Uint8Array((toMs - fromMs) / 1000);
  for (const holder of few(holders)) {
    const found = site.holders[holder];
    if (found === undefined) continue;
    const columns = asked(site, found).map((slot) => ({
      point: site.slots.pointId[slot] ?? '',
      unitOfMeasure: site.slots.unitOfMeasure[slot] ?? '1',
    }));
    const { minutesBeforeMs, quality } = await store.readSeconds({ holder: found.id, columns, fromMs, toMs });
    for (const column of quality) for (let i = 0; i < seen.length; i += 1) if (column[i] !== 0) seen[i] = 1;
    const untilMs = Math.ceil(Math.min(minutesBeforeMs, toMs) / minuteMs) * minuteMs;
    if (untilMs > fromMs)
      await seeMinutes(store, found.id, columns, Math.floor(fromMs / minuteMs) * minuteMs, untilMs, seen, fromMs);
  }
  return tracesOf(seen, fromMs);
}

/** Marks all seconds of the minutes in which anything was measured. */
async function seeMinutes(
  store: Pick<HistoryStore, 'read'>,
  holder: string,
  columns: readonly HistoryColumn[],
  startMs: number,
  endMs: number,
  seen: Uint8Array,
  fromMs: number,
): Promise<void> {
  for (const column of columns) {
    const span = { fromMs: startMs, toMs: endMs, buckets: (endMs - startMs) / minuteMs };
    const { count } = await store.read({ holder, ...column, ...span });
    for (const [i, measured] of count.entries()) {
      const at = (startMs + i * minuteMs - fromMs) / 1000;
      if (measured > 0) seen.fill(1, Math.max(0, at), Math.max(0, at + minuteMs / 1000));
    }
  }
}

/** Joined over pauses that are none. @param seen by second: 1 where something was recorded */
export function tracesOf(seen: Uint8Array, fromMs: number): Trace[] {
  const traces: { fromMs: number; toMs: number }[] = [];
  for (let i = 0; i < seen.length; i += 1) {
    if (seen[i] === 0) continue;
    const atMs = fromMs + i * 1000;
    const last = traces.at(-1);
    if (last !== undefined && atMs - last.toMs <= bridgedMs) last.toMs = atMs + 1000;
    else traces.push({ fromMs: atMs, toMs: atMs + 1000 });
  }
  return traces;
}

/** The first, one in the middle and the last of the units. */
function few(holders: readonly number[]): readonly number[] {
  if (holders.length <= unitsAsked) return holders;
  const last = holders.length - 1;
  return [...new Set([holders[1] ?? -1, holders[Math.ceil(last / 2)] ?? -1, holders[last] ?? -1])];
}

/** What is worked out each second, and what is measured most often. */
function asked({ slots }: CompiledSite, { firstSlot, slotCount, slotOf }: Holder): readonly number[] {
  const usual = ['vacuumMarginWorst', 'heatRemoved', 'dewPoint'].flatMap((point) => slotOf.get(point) ?? []);
  const measured = Array.from({ length: slotCount }, (_, i) => firstSlot + i)
    .filter((slot) => slots.measured[slot] === Origin.measured)
    .sort((a, b) => (slots.periodMs[a] ?? 0) - (slots.periodMs[b] ?? 0));
  return [...usual, ...measured.slice(0, pointsAsked - 1)];
}
