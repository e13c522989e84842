import type { Priority } from '@ebbline/shared/contract/alarm';
import { advanceDelay } from '../alarm-rules/delays';
import type { GroupEntry } from '../alarm-rules/entry';
import { clearFinding, createFinding } from '../alarm-rules/finding';
import type { GroupContext } from '../alarm-rules/group-context';
import { priorityOf } from '../alarm-rules/priority';
import type { ResolvedLimits } from '../alarm-rules/resolve-limits';
import { Verdict } from '../alarm-rules/verdict';
import { createGroupContext, fillGroupContext } from '../pipeline/group-step';
import { createPipelineState, type PipelineState } from '../pipeline/pipeline-state';
import type { CompiledSite, EntryLimits } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { SlotFiller } from './fill-slots';
import { groupPoints } from './group-points';
import { keepWorst, type Episode, type OutcomeLog } from './outcome-log';
import type { TrialColumns, UnitTrial } from './trial-columns';
import { limitsOf } from './trial-settings';

export interface TrialOfGroup {
  /** The loop or the hall with its units, and what it is compared with (`siteOf`), set as it is live. */
  readonly site: CompiledSite;
  readonly entry: GroupEntry;
  /** Place of the loop or the hall in that site. */
  readonly group: number;
  /** A unit of it, and its own id: how it is named where times in alarm are told. */
  readonly named: { readonly unit: string; readonly part: string };
  readonly live: EntryLimits | undefined;
  readonly proposed: EntryLimits;
  readonly logs: { readonly live: OutcomeLog; readonly proposed: OutcomeLog };
  /** Before this nothing is told. */
  readonly toldFromMs: number;
}

const finding = createFinding();

/** An entry of a loop or a hall with one setting, judged second by second on points that stand in slots. */
class GroupSide {
  private readonly context: GroupContext;
  private readonly alarm: number;
  private readonly limits: ResolvedLimits;
  private readonly priority: Priority | null;
  private open: Episode | null = null;

  constructor(
    private readonly of: TrialOfGroup,
    private readonly pipeline: PipelineState,
    state: SlotState,
    own: EntryLimits | undefined,
    private readonly log: OutcomeLog,
  ) {
    this.context = createGroupContext(pipeline);
    this.context.state = state;
    this.alarm = pipeline.index.ofEntryInGroup(of.entry.id, of.group);
    this.limits = limitsOf(of.entry.id, own);
    this.priority = priorityOf(of.entry.severity, of.entry.timeToRespondS);
  }

  step(nowMs: number): void {
    const { alarm, context, limits, pipeline } = this;
    const { entry, group } = this.of;
    fillGroupContext(pipeline, context, entry, group, alarm, nowMs);
    clearFinding(finding);
    if (limits.enabled) entry.judge(context, limits, pipeline.delays.active[alarm] === 1, finding);
    else finding.verdict = Verdict.no;
    const offDelayMs = limits.enabled ? limits.offDelayMs : 0;
    advanceDelay(pipeline.delays, alarm, finding.verdict, nowMs, limits.onDelayMs, offDelayMs);
    this.follow(nowMs);
  }

  private follow(nowMs: number): void {
    const { log, open } = this;
    if (this.pipeline.delays.active[this.alarm] === 0) {
      if (open !== null) log.end(open, nowMs);
      this.open = null;
    } else if (open !== null) {
      if (finding.verdict === Verdict.yes) keepWorst(open, finding.value);
    } else if (nowMs >= this.of.toldFromMs) {
      const { priority } = this;
      this.open = log.begin({ ...this.of.named, fromMs: nowMs, priority, worst: finding.value, limit: finding.limit });
    }
  }
}

/** Runs an entry of a loop or a hall on the points that it reads, as history has them. Null where the site lacks one that it needs. */
export function groupTrial(of: TrialOfGroup): UnitTrial | null {
  const live = createPipelineState(of.site, 'wall');
  const other = createPipelineState(of.site, 'wall');
  const wanted = groupPoints[of.entry.id](of.site, live.unitSlots).filter((slot) => slot >= 0);
  if (wanted.length === 0) return null;
  // What is judged for a loop asks for the modes too; of a site that has nothing but them it can't be judged.
  const modes = of.entry.per === 'loop' ? live.unitSlots.map(({ mode }) => mode).filter((slot) => slot >= 0) : [];
  const slots = Int32Array.from(new Set([...wanted, ...modes]));
  const filler = new SlotFiller(of.site, live.state, slots);
  const sides = [
    new GroupSide(of, live, live.state, of.live, of.logs.live),
    new GroupSide(of, other, live.state, of.proposed, of.logs.proposed),
  ];
  const counts = { judgedMs: 0, missingMs: 0 };
  return {
    slots,
    guards: [],
    setUncertainty: () => undefined,
    run(columns: TrialColumns, from: number, to: number) {
      const { startMs, stepMs } = columns;
      for (let place = from; place < to; place += 1) {
        const nowMs = startMs + place * stepMs;
        const runs = filler.fill(columns, place, nowMs);
        if (nowMs >= of.toldFromMs) counts[runs ? 'judgedMs' : 'missingMs'] += stepMs;
        for (const side of sides) side.step(nowMs);
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
