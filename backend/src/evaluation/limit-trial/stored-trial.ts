import type { UnitEntryId } from '../alarm-rules/entry-ids';
import { measuredBehind } from '../derive/inputs-of-slot';
import { modeOfUnit } from '../pipeline/mode-of-unit';
import { createPipelineState } from '../pipeline/pipeline-state';
import type { CompiledSite, EntryLimits } from '../site/compiled-site';
import { SlotFiller } from './fill-slots';
import type { OutcomeLog } from './outcome-log';
import { SettingSide } from './setting-side';
import { modeSlots, storedPoints } from './stored-points';
import type { TrialColumns, UnitTrial } from './trial-columns';
import { withLimits } from './unit-site';

export interface TrialOfUnit {
  /** The unit's own site (`siteOfUnit`), set as it is live. */
  readonly site: CompiledSite;
  readonly entry: UnitEntryId;
  readonly proposed: EntryLimits;
  readonly logs: { readonly live: OutcomeLog; readonly proposed: OutcomeLog };
  /** Before this nothing is told. */
  readonly toldFromMs: number;
}

/** Runs an entry on the points that it reads as history has them. Null where it needs more than that. */
export function storedTrial({ entry, logs, proposed, site, toldFromMs }: TrialOfUnit): UnitTrial | null {
  const points = storedPoints[entry];
  const [unit] = site.units;
  if (points === undefined || unit === undefined) return null;
  const live = createPipelineState(site, 'wall');
  const other = createPipelineState(withLimits(site, entry, proposed), 'wall');
  const { state } = live;
  const unitSlots = live.unitSlots[0];
  if (unitSlots === undefined) return null;
  const ends = points.ends?.(unitSlots) ?? -1;
  const behind = ends < 0 ? [] : measuredBehind(site, 0, ends);
  const wanted = [...points.slots(unitSlots, unit), ...modeSlots(unitSlots), ...behind].filter((slot) => slot >= 0);
  const slots = Int32Array.from(new Set(wanted));
  const filler = new SlotFiller(site, state, slots, new Map([[ends, behind]]));
  const sides = [
    new SettingSide(live, state, entry, logs.live, toldFromMs),
    new SettingSide(other, state, entry, logs.proposed, toldFromMs),
  ];
  const counts = { judgedMs: 0, missingMs: 0 };
  return {
    slots,
    guards: points.guards?.(unitSlots).filter((slot) => slot >= 0) ?? [],
    setUncertainty(slot, expanded) {
      state.expandedUncertainty[slot] = expanded;
    },
    run(columns: TrialColumns, from: number, to: number) {
      const { startMs, stepMs } = columns;
      for (let place = from; place < to; place += 1) {
        const nowMs = startMs + place * stepMs;
        const runs = filler.fill(columns, place, nowMs);
        if (nowMs >= toldFromMs) counts[runs ? 'judgedMs' : 'missingMs'] += stepMs;
        const mode = modeOfUnit(state, unitSlots);
        for (const side of sides) side.step(mode, nowMs);
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
