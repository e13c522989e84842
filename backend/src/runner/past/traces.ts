import { Origin, type CompiledSite, type Holder } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';

/** A stretch in which something was recorded, [fromMs, toMs). */
export interface Trace {
  readonly fromMs: number;
  readonly toMs: number;
}

/** A pause as long as a value lasts that is told each second is none. ms */
const bridgedMs = 5000;
/** Of so many units, and of so many points of each, is looked for traces: who runs leaves them at all. */
const unitsAsked = 3;
const pointsAsked = 3;

export interface Traces {
  /** In order. */
  readonly traces: readonly Trace[];
  /** Of before this only minutes are kept, and so no traces are found. −Infinity: of all there was seconds are kept. */
  readonly minutesBeforeMs: number;
}

/** Where anything was recorded of some holders. At most a day, from whole second to whole second. */
export async function readTraces(
  store: Pick<HistoryStore, 'readSeconds'>,
  site: CompiledSite,
  holders: readonly number[],
  fromMs: number,
  toMs: number,
): Promise<Traces> {
  const seen = new Uint8Array((toMs - fromMs) / 1000);
  let beforeMs = -Infinity;
  for (const holder of few(holders)) {
    const found = site.holders[holder];
    if (found === undefined) continue;
    const columns = asked(site, found).map((slot) => ({
      point: site.slots.pointId[slot] ?? '',
      unitOfMeasure: site.slots.unitOfMeasure[slot] ?? '1',
    }));
    const { minutesBeforeMs, quality } = await store.readSeconds({ holder: found.id, columns, fromMs, toMs });
    beforeMs = Math.max(beforeMs, minutesBeforeMs);
    for (const column of quality) for (let i = 0; i < seen.length; i += 1) if (column[i] !== 0) seen[i] = 1;
  }
  return { traces: tracesOf(seen, fromMs), minutesBeforeMs: beforeMs };
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
