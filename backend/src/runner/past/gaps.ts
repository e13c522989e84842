import type { PastMarks } from '@ebbline/shared/contract/past';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import type { MarksWanted } from '../../ports/past-desk';
import { timeText } from '../views/time-text';
import { readTraces } from './traces';

/** Where nothing was recorded in a period; to the minute where only minutes are kept. */
export async function gapsOf(
  store: Pick<HistoryStore, 'read' | 'readSeconds'>,
  site: CompiledSite,
  { hall, unit, fromMs, toMs }: MarksWanted,
  untilMs: number,
): Promise<PastMarks['gaps']> {
  const [startMs, endMs] = [Math.floor(fromMs / 1000) * 1000, Math.floor(Math.min(toMs, untilMs) / 1000) * 1000];
  if (!(endMs > startMs)) return [];
  const traces = await readTraces(store, site, holdersOf(site, hall, unit), startMs, endMs);
  const gaps: { from: string; to: string }[] = [];
  let reachedMs = startMs;
  for (const trace of [...traces, { fromMs: endMs, toMs: endMs }]) {
    // What begins late by a second or two is no gap.
    if (trace.fromMs - reachedMs > 5000) gaps.push({ from: iso(reachedMs), to: iso(trace.fromMs) });
    reachedMs = Math.max(reachedMs, trace.toMs);
  }
  return gaps;
}

function holdersOf(site: CompiledSite, hall: string | null, unit: string | null): number[] {
  const own = site.units.find(({ id }) => id === unit);
  if (own !== undefined) return [own.holder];
  const halls = site.halls.filter(({ id }) => hall === null || id === hall);
  return halls.flatMap((one) => [one.holder, ...one.units.map((at) => site.units[at]?.holder ?? -1)]);
}

const iso = (ms: number): string => timeText(ms) ?? new Date(0).toISOString();
