import type { TrialColumns } from '../../evaluation/limit-trial/trial-columns';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { HistoryColumn, HistorySeconds, HistoryStore } from '../../ports/history-store';

const minuteMs = 60_000;

export interface Stretch {
  /** In order of time; what is left as minutes first. */
  readonly parts: readonly TrialColumns[];
  /** Of before this only minutes are left; −Infinity where none was thrown away. */
  readonly minutesBeforeMs: number;
}

/** Columns of some slots, at most a day from whole second to whole second; from minutes where only these are left. */
export async function readStretch(
  store: Pick<HistoryStore, 'read' | 'readSeconds'>,
  site: CompiledSite,
  slots: Int32Array,
  fromMs: number,
  toMs: number,
): Promise<Stretch> {
  const seconds = await readSeconds(store, site, slots, fromMs, toMs);
  const { minutesBeforeMs } = seconds;
  const untilMs = Math.min(toMs, Math.ceil(minutesBeforeMs / minuteMs) * minuteMs);
  const whole: TrialColumns = { ...seconds, startMs: fromMs, stepMs: 1000 };
  if (!(untilMs > fromMs)) return { parts: [whole], minutesBeforeMs };
  const minutes = await readMinutes(store, site, slots, fromMs, untilMs);
  return { parts: untilMs < toMs ? [minutes, after(whole, untilMs)] : [minutes], minutesBeforeMs };
}

async function readSeconds(
  store: Pick<HistoryStore, 'readSeconds'>,
  site: CompiledSite,
  slots: Int32Array,
  fromMs: number,
  toMs: number,
): Promise<HistorySeconds> {
  const values: Float64Array[] = [];
  const quality: Uint8Array[] = [];
  let last: HistorySeconds | null = null;
  for (const [at, { id }] of site.holders.entries()) {
    const places = [...slots.keys()].filter((place) => site.slots.holder[slots[place] ?? -1] === at);
    if (places.length === 0) continue;
    const columns = places.map((place) => columnOf(site, slots[place] ?? -1));
    last = await store.readSeconds({ holder: id, columns, fromMs, toMs });
    for (const [i, place] of places.entries()) {
      values[place] = last.values[i] ?? new Float64Array(last.count).fill(Number.NaN);
      quality[place] = last.quality[i] ?? new Uint8Array(last.count);
    }
  }
  return {
    fromMs,
    count: (toMs - fromMs) / 1000,
    values,
    quality,
    minutesBeforeMs: last?.minutesBeforeMs ?? -Infinity,
  };
}

async function readMinutes(
  store: Pick<HistoryStore, 'read'>,
  site: CompiledSite,
  slots: Int32Array,
  fromMs: number,
  toMs: number,
): Promise<TrialColumns> {
  const count = Math.ceil((toMs - fromMs) / minuteMs);
  const values: Float64Array[] = [];
  const quality: Uint8Array[] = [];
  for (const slot of slots) {
    const holder = site.holders[site.slots.holder[slot] ?? -1]?.id ?? '';
    const span = { fromMs, toMs: fromMs + count * minuteMs, buckets: count };
    const { mean, count: measured } = await store.read({ holder, ...columnOf(site, slot), ...span });
    values.push(mean);
    quality.push(Uint8Array.from(measured, (seconds) => (seconds > 0 ? 1 : 0)));
  }
  return { startMs: fromMs, stepMs: minuteMs, count, values, quality };
}

const columnOf = ({ slots }: CompiledSite, slot: number): HistoryColumn => ({
  point: slots.pointId[slot] ?? '',
  unitOfMeasure: slots.unitOfMeasure[slot] ?? '1',
});

function after({ count, quality, startMs, stepMs, values }: TrialColumns, fromMs: number): TrialColumns {
  const from = Math.round((fromMs - startMs) / stepMs);
  return {
    startMs: fromMs,
    stepMs,
    count: count - from,
    values: values.map((column) => column.subarray(from)),
    quality: quality.map((column) => column.subarray(from)),
  };
}
