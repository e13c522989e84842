import type {
  EndTightnessRequest,
  StartTightnessRequest,
  TightnessList,
  TightnessTest,
} from '@ebbline/shared/contract/tightness-test';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { tightnessCautions } from '../evaluation/pipeline/tightness/cautions';
import type { TightnessAction } from '../evaluation/pipeline/tightness-record';
import type { Clock } from '../ports/clock';
import type { Actor } from '../ports/identity';
import type { TightnessDesk, TightnessDeskFault } from '../ports/tightness-desk';
import { journalUnavailable } from './journal-unavailable';
import type { RecordedChanges } from './recorded-changes';
import type { Scene } from './views/scene';
import { timeText } from './views/time-text';
import { toTightnessTest } from './views/to-tightness-test';

/** Guided pressure-rise tests: committed to the journal, carried out, and only then confirmed; or without any effect. */
export class RunnerTightnessDesk implements TightnessDesk {
  constructor(
    private readonly scene: Scene,
    private readonly changes: RecordedChanges,
    private readonly clock: Clock,
  ) {}

  list(unit: string): Result<TightnessList, TightnessDeskFault> {
    const { pipeline } = this.scene;
    const unitIndex = pipeline.site.units.findIndex(({ id }) => id === unit);
    if (unitIndex < 0) return fail(noUnit);
    const nowMs = this.nowMs();
    const tests = pipeline
      .tightnessTests()
      .filter((test) => test.unit === unit)
      .sort((a, b) => b.startedMs - a.startedMs)
      .map((test) => toTightnessTest(test, nowMs));
    const running = tests.find(({ state }) => state === 'running');
    const refusals =
      running === undefined
        ? pipeline.tightnessRefusals(unitIndex)
        : [{ code: 'TIGHTNESS_RUNNING', message: `test ${running.id} runs` } as const];
    return ok({
      unit,
      time: timeText(nowMs) ?? new Date(0).toISOString(),
      refusals: refusals.map(({ code, message }) => ({ code, message })),
      cautions: [...tightnessCautions],
      tests,
    });
  }

  find(unit: string, test: string): Result<TightnessTest, TightnessDeskFault> {
    const listed = this.list(unit);
    if (!listed.ok) return listed;
    const found = listed.value.tests.find(({ id }) => id === test);
    return found === undefined
      ? fail({ code: 'TIGHTNESS_UNKNOWN', message: `unit ${unit} has no test ${test}; look at the list again` })
      : ok(found);
  }

  start(unit: string, request: StartTightnessRequest, actor: Actor): Result<TightnessTest, TightnessDeskFault> {
    return this.act({
      kind: 'startTightness',
      unit,
      plannedMs: request.plannedMinutes * 60_000,
      acceptanceLimitM3PerS: request.acceptanceLimit,
      dry: request.dry,
      sourceIsolated: request.sourceIsolated,
      gasVolumeM3: request.gasVolume,
      operator: actor.name,
      station: actor.station,
      comment: request.comment,
    });
  }

  end(
    unit: string,
    test: string,
    { comment }: EndTightnessRequest,
    { name: operator, station }: Actor,
  ): Result<TightnessTest, TightnessDeskFault> {
    return this.act({ kind: 'endTightness', unit, test, operator, station, comment });
  }

  private act(action: TightnessAction): Result<TightnessTest, TightnessDeskFault> {
    const nowMs = this.nowMs();
    const outcome = this.scene.pipeline.actOnTightness(action, nowMs, (change) =>
      this.changes.recordTightness(change, this.clock.wallMs()),
    );
    if (outcome.ok) return ok(toTightnessTest(outcome.change.test, nowMs));
    const { code, message } = outcome;
    return fail(code === 'ACTION_NOT_RECORDED' ? journalUnavailable : { code, message });
  }

  /** On the source clock there is no time before the first sample. */
  private nowMs(): number {
    const nowMs = this.scene.nowMs();
    return Number.isNaN(nowMs) ? this.clock.wallMs() : nowMs;
  }
}

const noUnit = { code: 'UNIT_UNKNOWN', message: 'The site has no unit of this id; /api/units lists them.' } as const;
