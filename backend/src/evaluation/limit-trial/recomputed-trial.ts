import { lineTable } from '../alarm-rules/limit-lines/line-table';
import type { UnitEntryId } from '../alarm-rules/entry-ids';
import { usable, type UnitContext } from '../alarm-rules/judge-context';
import { createContext } from '../pipeline/fill-context';
import { hallStep } from '../pipeline/hall-step';
import { HistoryBuilder } from '../pipeline/history-builder';
import { createPipelineState, type PipelineState } from '../pipeline/pipeline-state';
import { unitStep } from '../pipeline/unit-step';
import { Origin, type CompiledSite } from '../site/compiled-site';
import { SlotFiller } from './fill-slots';
import { keepWorst, type Episode, type OutcomeLog } from './outcome-log';
import { alarmsOf } from './setting-side';
import type { TrialOfUnit } from './stored-trial';
import type { UnitTrial } from './trial-columns';
import { withLimits } from './unit-site';

/** What everything is worked out anew from. */
const secondMs = 1000;

/** A trial writes no history. */
export class NoHistory extends HistoryBuilder {
  override put(): void {}
  override openRow(): void {}
  override putInRow(): void {}
}

/** The whole evaluation of one unit with one setting. */
class RecomputedSide {
  private readonly pipeline: PipelineState;
  private readonly context: UnitContext;
  private readonly alarms: ReturnType<typeof alarmsOf>;
  private readonly open = new Map<number, Episode>();
  private readonly shownSlot: number;
  readonly filler: SlotFiller;

  constructor(
    site: CompiledSite,
    slots: Int32Array,
    entry: UnitEntryId,
    private readonly log: OutcomeLog,
    private readonly toldFromMs: number,
  ) {
    this.pipeline = { ...createPipelineState(site, 'wall'), history: new NoHistory(site) };
    this.context = createContext(this.pipeline);
    this.alarms = alarmsOf(this.pipeline, entry);
    this.filler = new SlotFiller(site, this.pipeline.state, slots);
    const [line] = lineTable[entry] ?? [];
    this.shownSlot = line === undefined ? -1 : (site.holders[1]?.slotOf.get(line.point) ?? -1);
  }

  step(nowMs: number): void {
    const { pipeline } = this;
    if (Number.isNaN(pipeline.startedMs)) pipeline.startedMs = nowMs;
    pipeline.transitions.length = 0;
    hallStep(pipeline, nowMs);
    unitStep(pipeline, this.context, 0, nowMs);
    pipeline.alertChanges.length = 0;
    for (const { alarm, partId } of this.alarms) {
      const open = this.open.get(alarm);
      if (pipeline.delays.active[alarm] !== 1) {
        if (open !== undefined) this.log.end(open, nowMs);
        this.open.delete(alarm);
      } else if (open !== undefined) keepWorst(open, usable(pipeline.state, this.shownSlot));
      else if (nowMs >= this.toldFromMs) this.open.set(alarm, this.begin(alarm, partId, nowMs));
    }
  }

  private begin(alarm: number, part: string | null, fromMs: number): Episode {
    const record = this.pipeline.book.record(alarm);
    const told = record?.active === true ? record : null;
    return this.log.begin({
      unit: this.pipeline.site.units[0]?.id ?? '',
      part,
      fromMs,
      priority: told?.priority ?? null,
      worst: told?.value ?? Number.NaN,
      limit: told?.limit ?? Number.NaN,
    });
  }
}

/** Slots of everything that the unit and its hall measure: what all else is worked out from. */
export const measuredSlots = ({ slots }: CompiledSite): Int32Array =>
  Int32Array.from(
    Array.from({ length: slots.count }, (_, slot) => slot).filter((slot) => slots.measured[slot] === Origin.measured),
  );

/** Works out everything of the unit anew from what was measured, once with each setting. */
export function recomputedTrial({ entry, logs, proposed, site, toldFromMs }: TrialOfUnit): UnitTrial {
  const slots = measuredSlots(site);
  const sides = [
    new RecomputedSide(site, slots, entry, logs.live, toldFromMs),
    new RecomputedSide(withLimits(site, entry, proposed), slots, entry, logs.proposed, toldFromMs),
  ];
  const counts = { judgedMs: 0, missingMs: 0 };
  return {
    slots,
    guards: [],
    setUncertainty: () => undefined,
    run(columns, from, to) {
      const { startMs, stepMs } = columns;
      for (let place = from; place < to; place += 1) {
        const nowMs = startMs + place * stepMs;
        let runs = false;
        // From the mean of a minute nothing can be worked out anew: it counts as not recorded.
        if (stepMs === secondMs) for (const side of sides) runs = side.filler.fill(columns, place, nowMs);
        if (nowMs >= toldFromMs) counts[runs ? 'judgedMs' : 'missingMs'] += stepMs;
        // Nothing was recorded, so the program saw nothing: it judges on where data goes on.
        if (runs) for (const side of sides) side.step(nowMs);
      }
    },
    get judgedMs() {
      return counts.judgedMs;
    },
    get missingMs() {
      return counts.missingMs;
    },
  };
}
