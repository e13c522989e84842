import type { Report } from '@ebbline/shared/contract/report';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import { gapsOf } from '../past/gaps';

const dayMs = 86_400_000;
type Gaps = NonNullable<Report['gaps']>;

/** Where nothing was recorded in a period of several days: history gives a day of seconds at once. */
export async function gapsByDay(
  store: Pick<HistoryStore, 'read' | 'readSeconds'>,
  site: CompiledSite,
  { hall, fromMs, untilMs }: { readonly hall: string | null; readonly fromMs: number; readonly untilMs: number },
): Promise<Gaps> {
  const gaps: Gaps = [];
  for (let startMs = fromMs; startMs < untilMs; startMs += dayMs) {
    const wanted = { hall, unit: null, fromMs: startMs, toMs: Math.min(untilMs, startMs + dayMs) };
    for (const gap of await gapsOf(store, site, wanted, untilMs)) {
      const last = gaps.at(-1);
      // One that lasts over the end of a day is one.
      if (last?.to === gap.from) last.to = gap.to;
      else gaps.push({ ...gap });
    }
  }
  return gaps;
}
