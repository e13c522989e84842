import { measuredSlots } from '../../evaluation/limit-trial/recomputed-trial';
import { UncertaintyProbe } from '../../evaluation/limit-trial/uncertainty-probe';
import { siteOfUnit } from '../../evaluation/limit-trial/unit-site';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import type { Pause } from '../performance/read-steps';
import { readStretch } from '../trial-desk/read-stretch';

/** What was measured in so long before a moment is enough to work out its uncertainties. */
const probeMs = 120_000;
const mostKept = 2000;
const nothingHoldsMs = 300_000;
/** Seconds that are judged again before others have their turn. */
const stepsAtOnce = 10;

/** By point, in its unit of measure; NaN where it could not be worked out. */
export type MomentUncertainties = ReadonlyMap<string, number>;

export interface ProbedMoment {
  readonly uncertainties: MomentUncertainties;
  /** True where only minutes are left of it, from which nothing can be worked out anew. */
  readonly minutesOnly: boolean;
  readonly minutesBeforeMs: number;
}

interface Kept extends ProbedMoment {
  /** NaN: for good. Of what is not there rows may still come, as after an outage. */
  readonly untilMs: number;
}

const nothing: MomentUncertainties = new Map();

/**
 * Uncertainties of past moments, one moment of one unit at a time, worked out anew from what was measured: history has none. Those worked out
 * last are kept, until another site file is in force.
 */
export class PastUncertainties {
  private site: CompiledSite | null = null;
  private readonly kept = new Map<string, Kept>();

  constructor(
    private readonly store: Pick<HistoryStore, 'read' | 'readSeconds'>,
    private readonly pause: Pause,
  ) {}

  /** @param unitIndex of `site` @param atMs a whole second */
  async work(site: CompiledSite, unitIndex: number, atMs: number, nowMs: number): Promise<ProbedMoment> {
    const probed = await this.probe(siteOfUnit(site, unitIndex), atMs);
    const untilMs = probed.uncertainties.size > 0 ? Number.NaN : nowMs + nothingHoldsMs;
    if (this.site === site) this.keep(keyOf(unitIndex, atMs), { ...probed, untilMs });
    return probed;
  }

  /** What was worked out before; null where it was not. */
  known(site: CompiledSite, unitIndex: number, atMs: number, nowMs: number): ProbedMoment | null {
    if (site !== this.site) this.kept.clear();
    this.site = site;
    const kept = this.kept.get(keyOf(unitIndex, atMs));
    return kept === undefined || kept.untilMs < nowMs ? null : kept;
  }

  private async probe(site: CompiledSite, atMs: number): Promise<ProbedMoment> {
    const slots = measuredSlots(site);
    const { minutesBeforeMs, parts } = await readStretch(this.store, site, slots, atMs - probeMs, atMs + 1000);
    const columns = parts.find(({ stepMs }) => stepMs === 1000);
    const minutesOnly = atMs < minutesBeforeMs;
    if (columns === undefined || minutesOnly) return { uncertainties: nothing, minutesOnly, minutesBeforeMs };
    const probe = new UncertaintyProbe(site, columns);
    for (let place = 0; place < columns.count; place += stepsAtOnce) {
      probe.run(place, Math.min(place + stepsAtOnce, columns.count));
      await this.pause();
    }
    const known = site.slots.pointId.flatMap((point, slot) => {
      const expanded = probe.expanded(slot);
      return Number.isFinite(expanded) ? [[point, expanded] as const] : [];
    });
    return { uncertainties: new Map(known), minutesOnly, minutesBeforeMs };
  }

  private keep(key: string, probed: Kept): void {
    this.kept.set(key, probed);
    const [oldest] = this.kept.keys();
    if (this.kept.size > mostKept && oldest !== undefined) this.kept.delete(oldest);
  }
}

const keyOf = (unitIndex: number, atMs: number): string => `${unitIndex} ${atMs}`;
