import { pointDefinition, pointPattern } from '@ebbline/shared/contract/point-table';
import { isActive } from '../../../../../backend/src/evaluation/alarm-rules/judge-context';
import { unitEntries } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { createContext } from '../../../../../backend/src/evaluation/pipeline/fill-context';
import { hallStep } from '../../../../../backend/src/evaluation/pipeline/hall-step';
import type { AlarmRecord } from '../../../../../backend/src/evaluation/pipeline/outputs';
import { createPipelineState, type PipelineState } from '../../../../../backend/src/evaluation/pipeline/pipeline-state';
import { restoreAlarms } from '../../../../../backend/src/evaluation/pipeline/restore';
import { unitStep } from '../../../../../backend/src/evaluation/pipeline/unit-step';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, type BuiltSite } from '../../../../helpers/compiled-site-builder';
import { richOptions, runRichUnitM } from '../../../../helpers/rich-unit-m';

/** 2026-03-01T00:00:00Z. */
const startMs = 1_772_323_200_000;

/** Points that make nearly every entry of the catalogue apply, with what they read when all is well. */
const more: Readonly<Record<string, number>> = {
  'pump.command': 1,
  'pump.available': 1,
  'pump.standby.running': 0,
  'vacuum.command': 1,
  'vacuum.standby.running': 0,
  'vacuum.trap.full': 0,
  'vacuum.bleedFlow': 0,
  'valve.command': 0.5,
  'valve.position': 0.5,
  'supplyTank.vent.command': 0,
  'supplyTank.vent.position': 0,
  'supply.setPoint': 36.3,
  'supplyTank.setPoint': 74_000,
  'separator.setPoint': 32_000,
  'control.manual': 0,
  'tray.water.found': 0,
  'separator.levelHigh': 0,
  'water.ph': 8.5,
  'water.bacteria': 10,
  'water.inhibitor': 0.5,
  'water.copper': 0.0001,
  'water.turbidity': 5,
};

/** Why a measured point may be bad. */
export const badReasons = ['notReceived', 'stale', 'ageUnknown', 'outOfRange', 'senderFlag'] as const;
export type BadReason = (typeof badReasons)[number];

/**
 * The judge with its derived points: a test sets what is measured, and lets seconds pass. Points are as good as the last second
 * unless they are bad.
 */
export class ChainBench {
  readonly pipeline: PipelineState;
  nowMs = startMs;
  private readonly built: BuiltSite;
  private readonly context;
  private readonly badPoints = new Set<string>();
  private reason: BadReason = 'senderFlag';

  constructor() {
    const design = { supplyClassLimitC: 45, facilityDesignSupplyC: 32, plateWallResistanceKPerW: 0.05 };
    const options = richOptions({ also: Object.keys(more), design });
    this.built = buildSite({
      ...options,
      design: {
        ...options.design,
        ...design,
        filterRatingPa: 60_000,
        commissioned: { ...options.design?.commissioned, pumpEfficiency: 0.5 } as never,
      },
      limits: new Map([['CHEM-1', { limit: 0.02, low: 0.0005 } as never]]),
    });
    this.pipeline = createPipelineState(this.built.site, 'wall');
    this.pipeline.startedMs = startMs;
    this.context = createContext(this.pipeline);
    runRichUnitM({ ...this.built, set: (point, value) => void this.set(point, value) });
    for (const [point, value] of Object.entries(more)) this.set(point, value);
  }

  get measured(): readonly string[] {
    return this.built.site.slots.pointId.filter((point) => pointDefinition(point)?.kind === 'measured');
  }

  set(point: string, value: number): this {
    this.badPoints.delete(point);
    this.pipeline.state.value[this.built.slot(point)] = value;
    return this;
  }

  /** Every measured point of these patterns has no value that may be used. */
  bad(patterns: readonly string[]): this {
    for (const point of this.measured) if (patterns.includes(pointPattern(point))) this.badPoints.add(point);
    return this;
  }

  /** One measured point, by its whole id. */
  badPoint(point: string): this {
    this.badPoints.add(point);
    return this;
  }

  good(): this {
    this.badPoints.clear();
    return this;
  }

  allBad(reason: BadReason = 'senderFlag'): this {
    this.reason = reason;
    for (const point of this.measured) this.badPoints.add(point);
    return this;
  }

  run(seconds: number): this {
    for (let second = 0; second < seconds; second += 1) {
      this.nowMs += 1000;
      this.refresh();
      hallStep(this.pipeline, this.nowMs);
      unitStep(this.pipeline, this.context, 0, this.nowMs);
    }
    return this;
  }

  /** All alarms that this site can have, or those of one entry, stand since before a restart. */
  restore(entry?: string): readonly string[] {
    const names = [...this.pipeline.index.byName()].filter(
      ([, place]) => this.pipeline.applies[place] === 1 && this.isJudged(place),
    );
    const records = names
      .filter(([, place]) => entry === undefined || this.pipeline.index.identity(place).entry === entry)
      .map(([alarm, place]) => recordOf(alarm, this.pipeline.index.identity(place).entry, this.nowMs));
    restoreAlarms(this.pipeline, records);
    return records.map(({ alarm }) => alarm);
  }

  activeNames(): readonly string[] {
    return this.pipeline.book
      .standing()
      .filter(({ active }) => active)
      .map(({ alarm }) => alarm);
  }

  isActive(entry: Parameters<typeof isActive>[1]): boolean {
    return isActive(this.context, entry);
  }

  /** The place of an entry that is judged for parts stands for all of them, and is no alarm of its own. */
  private isJudged(place: number): boolean {
    const judged = this.pipeline.index.judgedOf(place);
    return judged === null || (unitEntries[judged.place]?.per === undefined) === judged.part < 0;
  }

  private refresh(): void {
    const { state } = this.pipeline;
    for (const point of this.measured) {
      const slot = this.built.slot(point);
      const bad = this.badPoints.has(point);
      state.reasons[slot] = bad ? reasonBit[this.reason] : 0;
      if (bad && this.reason === 'notReceived') state.value[slot] = Number.NaN;
      if (bad) continue;
      state.acceptedMs[slot] = this.nowMs;
      state.sourceMs[slot] = this.nowMs;
      for (let gateway = 0; gateway < this.pipeline.gatewayHeardMs.length; gateway += 1)
        this.pipeline.gatewayHeardMs[gateway] = this.nowMs;
    }
  }
}

const recordOf = (alarm: string, entry: string, nowMs: number): AlarmRecord => ({
  alarm,
  entry,
  unit: 'm1',
  hall: 'hall1',
  state: 'unacknowledged',
  active: true,
  priority: 3,
  sinceMs: nowMs - 600_000,
  stateSinceMs: nowMs - 590_000,
  value: 1,
  limit: 1,
  unitOfMeasure: '1',
  where: null,
  foldedUnder: null,
  acknowledgedBy: null,
  acknowledgedAtMs: null,
});
