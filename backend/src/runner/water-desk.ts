import type {
  HandCorrectionRequest,
  HandEntry,
  HandEntryList,
  HandEntryRequest,
  HandWithdrawalRequest,
} from '@ebbline/shared/contract/hand-entry';
import type { WaterQuality } from '@ebbline/shared/contract/water-quality';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { HandAction } from '../evaluation/pipeline/hand-record';
import type { Clock } from '../ports/clock';
import type { Actor } from '../ports/identity';
import type { WaterDesk, WaterDeskFault } from '../ports/water-desk';
import { journalUnavailable } from './journal-unavailable';
import type { RecordedChanges } from './recorded-changes';
import type { Scene } from './views/scene';
import { timeText } from './views/time-text';
import { toHandEntry } from './views/to-hand-entry';
import { toWaterQuality } from './views/to-water-quality';

/** Values of the water that people type: committed to the journal, taken in, and only then confirmed; or without any effect. */
export class RunnerWaterDesk implements WaterDesk {
  constructor(
    private readonly scene: Scene,
    private readonly changes: RecordedChanges,
    private readonly clock: Clock,
  ) {}

  quality(id: string): Result<WaterQuality, WaterDeskFault> {
    const unit = this.unitOf(id);
    return unit < 0 ? fail(noUnit) : ok(toWaterQuality(this.scene, unit, this.nowMs()));
  }

  entries(unit: string): Result<HandEntryList, WaterDeskFault> {
    if (this.unitOf(unit) < 0) return fail(noUnit);
    const { pipeline } = this.scene;
    const entries = pipeline.handEntries(unit).map((record) => toHandEntry(record, pipeline));
    return ok({ unit, time: timeText(this.nowMs()) ?? new Date(0).toISOString(), entries });
  }

  enter(unit: string, request: HandEntryRequest, actor: Actor): Result<HandEntry, WaterDeskFault> {
    const { parameter, value } = request;
    return this.act({ kind: 'enterByHand', unit, parameter, value, ...typedOf(request, actor) });
  }

  correct(
    unit: string,
    entry: string,
    request: HandCorrectionRequest,
    actor: Actor,
  ): Result<HandEntry, WaterDeskFault> {
    return this.act({ kind: 'correctByHand', unit, entry, value: request.value, ...typedOf(request, actor) });
  }

  withdraw(
    unit: string,
    entry: string,
    { note }: HandWithdrawalRequest,
    { name: operator, station }: Actor,
  ): Result<HandEntry, WaterDeskFault> {
    return this.act({ kind: 'withdrawByHand', unit, entry, note, operator, station });
  }

  private act(action: HandAction): Result<HandEntry, WaterDeskFault> {
    const { pipeline } = this.scene;
    const outcome = pipeline.actOnHand(action, this.nowMs(), (record) =>
      this.changes.recordHand(record, this.clock.wallMs()),
    );
    if (outcome.ok) return ok(toHandEntry(outcome.record, pipeline));
    const { code, message } = outcome;
    return fail(code === 'ACTION_NOT_RECORDED' ? journalUnavailable : { code, message });
  }

  private unitOf(id: string): number {
    return this.scene.pipeline.site.units.findIndex((unit) => unit.id === id);
  }

  /** On the source clock there is no time before the first sample. */
  private nowMs(): number {
    const nowMs = this.scene.nowMs();
    return Number.isNaN(nowMs) ? this.clock.wallMs() : nowMs;
  }
}

const noUnit = { code: 'UNIT_UNKNOWN', message: 'The site has no unit of this id; /api/units lists them.' } as const;

const typedOf = (
  { as, method, note, sampleTemperature, takenAt, unit: unitOfMeasure }: HandEntryRequest | HandCorrectionRequest,
  { name: operator, station }: Actor,
) => ({ as, method, note, sampleTemperature, takenMs: Date.parse(takenAt), unitOfMeasure, operator, station });
