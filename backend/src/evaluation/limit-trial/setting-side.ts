import { modes } from '@ebbline/shared/contract/http-api';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import { advanceDelay, DelayChange } from '../alarm-rules/delays';
import { unitEntryPlace, type UnitEntryId } from '../alarm-rules/entry-ids';
import { createFinding, type UnitContext } from '../alarm-rules/judge-context';
import type { ResolvedLimits } from '../alarm-rules/resolve-limits';
import { Verdict } from '../alarm-rules/verdict';
import { createContext, fillContext } from '../pipeline/fill-context';
import { findCondition, priorityOfFinding } from '../pipeline/find-condition';
import type { ModeFound } from '../pipeline/mode-of-unit';
import { isOff } from '../pipeline/off-in-mode';
import { partsOf } from '../pipeline/part-index';
import type { PipelineState } from '../pipeline/pipeline-state';
import type { SlotState } from '../slots/slot-state';
import { keepWorst, type Episode, type OutcomeLog } from './outcome-log';

const finding = createFinding();

/** Every alarm of one entry at the unit of a small site: of the whole unit (part −1), or of each part that has it. */
export function alarmsOf(pipeline: PipelineState, entry: UnitEntryId) {
  const place = unitEntryPlace[entry];
  const [unit] = pipeline.site.units;
  const per = unitEntries[place]?.per;
  const all =
    unit === undefined || per === undefined
      ? [{ part: -1, partId: null, alarm: pipeline.index.ofUnit(0) + place }]
      : partsOf(unit, per).map(({ id }, part) => ({
          part,
          partId: id,
          alarm: pipeline.index.parts.of(0, place) + part,
        }));
  return all.filter(({ alarm }) => pipeline.applies[alarm] === 1);
}

/** One entry with one setting, judged second by second on points that stand in slots. */
export class SettingSide {
  private readonly context: UnitContext;
  private readonly place: number;
  private readonly limits: ResolvedLimits;
  private readonly alarms: ReturnType<typeof alarmsOf>;
  private readonly open = new Map<number, Episode>();

  constructor(
    private readonly pipeline: PipelineState,
    state: SlotState,
    entry: UnitEntryId,
    private readonly log: OutcomeLog,
    /** Before this nothing is told: windows and delays fill. */
    private readonly toldFromMs: number,
  ) {
    this.context = createContext(pipeline);
    this.context.state = state;
    this.place = unitEntryPlace[entry];
    this.limits = pipeline.limits[0]?.[this.place] as ResolvedLimits;
    this.alarms = alarmsOf(pipeline, entry);
  }

  step(mode: ModeFound, nowMs: number): void {
    const { alarms, context, limits, pipeline, place } = this;
    const { delays } = pipeline;
    fillContext(pipeline, context, 0, mode, nowMs);
    const off = isOff(place, modes.indexOf(mode.mode), mode.told);
    let any = 0;
    for (let i = 0; i < alarms.length; i += 1) {
      const { alarm, part } = alarms[i] as (typeof alarms)[number];
      context.part = part;
      context.alarm = alarm;
      const active = delays.active[alarm] === 1;
      findCondition(context, place, limits, off, active, finding);
      const offDelayMs = limits.enabled ? limits.offDelayMs : 0;
      const change = advanceDelay(delays, alarm, finding.verdict, nowMs, limits.onDelayMs, offDelayMs);
      if (active || change !== DelayChange.none) this.follow(i, nowMs);
      any |= delays.active[alarm] as number;
    }
    if (alarms[0] !== undefined && alarms[0].part >= 0) delays.active[context.activeFrom + place] = any;
  }

  private follow(at: number, nowMs: number): void {
    const { alarm, partId } = this.alarms[at] as (typeof this.alarms)[number];
    const open = this.open.get(alarm);
    if (this.pipeline.delays.active[alarm] === 0) {
      if (open !== undefined) this.log.end(open, nowMs);
      this.open.delete(alarm);
    } else if (open !== undefined) {
      if (finding.verdict === Verdict.yes) keepWorst(open, finding.value);
    } else if (nowMs >= this.toldFromMs) {
      const begun = this.log.begin({
        unit: this.context.unit.id,
        part: partId,
        fromMs: nowMs,
        priority: priorityOfFinding(this.place, finding),
        worst: finding.value,
        limit: finding.limit,
      });
      this.open.set(alarm, begun);
    }
  }
}
