import { modes, type Mode } from '@ebbline/shared/contract/http-api';
import { createContext, fillContext } from '../../../../../backend/src/evaluation/pipeline/fill-context';
import { detailNow } from '../../../../../backend/src/evaluation/pipeline/detail-of';
import { shownAlerts } from '../../../../../backend/src/evaluation/pipeline/shown-alerts';
import { judgeUnit } from '../../../../../backend/src/evaluation/pipeline/judge-unit';
import { modeOfUnit } from '../../../../../backend/src/evaluation/pipeline/mode-of-unit';
import { createPipelineState, type PipelineState } from '../../../../../backend/src/evaluation/pipeline/pipeline-state';
import type { CompiledUnit } from '../../../../../backend/src/evaluation/site/compiled-site';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type SiteOptions } from '../../../../helpers/compiled-site-builder';

/** 2026-03-01T00:00:00Z. */
const startMs = 1_772_323_200_000;

export interface BenchOptions extends SiteOptions {
  /** Measured and derived points besides the usual ones. */
  readonly also?: readonly string[];
  /** Values from the start on, by point. */
  readonly values?: Readonly<Record<string, number>>;
  /** The unit has no mode point: the mode is inferred. */
  readonly modeInferred?: boolean;
  readonly unit?: (unit: CompiledUnit, slotOf: (point: string) => number) => CompiledUnit;
}

/**
 * The judge alone: a test writes points of one unit, measured and derived alike, and lets seconds pass. Nothing is decoded or
 * derived, so each rule is seen by itself, with its delays, modes and folding.
 */
export class RuleBench {
  readonly pipeline: PipelineState;
  nowMs = startMs;
  private readonly context;
  private readonly slotOf: (point: string) => number;

  constructor(options: BenchOptions = {}) {
    const usual = ['pump.inlet.pressure', 'supply.pressure', 'return.pressure'];
    const without = [...(options.without ?? usual), ...(options.modeInferred === true ? ['mode'] : [])];
    const built = buildSite({ ...options, without });
    const { unit: change } = options;
    const units = built.site.units.map((unit) => (change === undefined ? unit : change(unit, built.slot)));
    const site = { ...built.site, units };
    this.pipeline = createPipelineState(site, 'wall');
    this.context = createContext(this.pipeline);
    this.slotOf = (point) => built.slot(point);
    runUnitM({ site, set: (point, value) => this.set(point, value) });
    for (const [point, value] of Object.entries(options.values ?? {})) this.set(point, value);
  }

  set(point: string, value: number): this {
    const slot = this.slotOf(point);
    this.pipeline.state.value[slot] = value;
    this.pipeline.state.reasons[slot] = 0;
    return this;
  }

  bad(point: string): this {
    this.pipeline.state.reasons[this.slotOf(point)] = reasonBit.stale;
    return this;
  }

  contradicted(point: string): this {
    this.pipeline.state.reasons[this.slotOf(point)] = reasonBit.contradicted;
    return this;
  }

  uncertain(point: string): this {
    this.pipeline.state.reasons[this.slotOf(point)] = reasonBit.inputUncertain;
    return this;
  }

  mode(mode: Mode): this {
    return this.set('mode', modes.indexOf(mode));
  }

  /** Lets so many seconds pass, one by one or in steps of `stepS`; `change` moves the plant before each. */
  run(seconds: number, change: (second: number) => void = () => undefined, stepS = 1): this {
    for (let second = 0; second < seconds; second += stepS) {
      change(second);
      this.nowMs += stepS * 1000;
      fillContext(this.pipeline, this.context, 0, modeOfUnit(this.pipeline.state, this.context.slots), this.nowMs);
      judgeUnit(this.pipeline, this.context);
    }
    return this;
  }

  hours(hours: number, stepS = 60): this {
    return this.run(hours * 3600, undefined, stepS);
  }

  /** In alarm, or told as an alert. */
  active(entry: string): boolean {
    return this.alarm(entry)?.active === true || this.alert(entry) !== undefined;
  }

  alarm(entry: string) {
    return this.pipeline.book.standing().find((record) => record.entry === entry);
  }

  alert(entry: string) {
    return shownAlerts(this.pipeline).find((record) => record.entry === entry);
  }

  detail(entry: string): string | null {
    const record = this.alarm(entry);
    const index = record === undefined ? undefined : this.pipeline.book.indexOfName(record.alarm);
    return index === undefined ? null : detailNow(this.pipeline, index);
  }

  /** Entries that are in alarm or told as alerts. */
  all(): string[] {
    const alarms = this.pipeline.book.standing().filter(({ active }) => active);
    return [...alarms, ...shownAlerts(this.pipeline)].map(({ entry }) => entry).sort();
  }

  /** Seconds from now until the entry is active; −1 where it is not within `within`. */
  secondsUntil(entry: string, within: number): number {
    for (let second = 1; second <= within; second += 1) if (this.run(1).active(entry)) return second;
    return -1;
  }

  /** Seconds from now until it is so no more. */
  secondsUntilGone(entry: string, within: number): number {
    for (let second = 1; second <= within; second += 1) if (!this.run(1).active(entry)) return second;
    return -1;
  }
}
