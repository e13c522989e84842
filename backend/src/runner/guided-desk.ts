import type {
  CancelGuidedRequest,
  ConfirmGuidedRequest,
  GuidedList,
  GuidedOffer,
  GuidedSurvey,
  GuidedTest,
  StartGuidedRequest,
} from '@ebbline/shared/contract/guided-test';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { guidedCautions } from '../evaluation/pipeline/guided/guided-cautions';
import type { GuidedAction, GuidedRecord } from '../evaluation/pipeline/guided/guided-record';
import { guidedTable } from '../evaluation/pipeline/guided/guided-table';
import type { Clock } from '../ports/clock';
import type { GuidedDesk, GuidedDeskFault } from '../ports/guided-desk';
import type { Actor } from '../ports/identity';
import { journalUnavailable } from './journal-unavailable';
import type { RecordedChanges } from './recorded-changes';
import type { Scene } from './views/scene';
import { timeText } from './views/time-text';
import { toGuidedTest } from './views/to-guided-test';

/** So many tests of a unit are listed; older ones stay in the journal and are found by their id. */
const mostListed = 50;

/** Guided tests: committed to the journal, carried out, and only then confirmed; or without any effect. */
export class RunnerGuidedDesk implements GuidedDesk {
  constructor(
    private readonly scene: Scene,
    private readonly changes: RecordedChanges,
    private readonly clock: Clock,
  ) {}

  survey(): GuidedSurvey {
    const { pipeline } = this.scene;
    const tests = pipeline.guidedTests();
    const units = pipeline.site.units.map(({ id: unit }, index) => {
      const own = newestFirst(tests.filter((test) => test.unit === unit));
      const open = own.find(({ state }) => state !== 'ended');
      const last = own.find(({ state }) => state === 'ended');
      return {
        unit,
        open: open === undefined ? null : { id: open.id, title: titleOf(open) },
        offers: this.offers(index).map(({ kind, title, refusals }) => ({ kind, title, refusals })),
        rise: this.rise(unit, index),
        last:
          last === undefined
            ? null
            : {
                id: last.id,
                title: titleOf(last),
                endedAt: last.endedMs === null ? null : timeText(last.endedMs),
                verdict: last.verdict,
              },
      };
    });
    return { time: this.time(), units };
  }

  list(unit: string): Result<GuidedList, GuidedDeskFault> {
    const { pipeline } = this.scene;
    const index = pipeline.site.units.findIndex(({ id }) => id === unit);
    if (index < 0) return fail(noUnit);
    const tests = newestFirst(pipeline.guidedTests().filter((test) => test.unit === unit));
    return ok({
      unit,
      time: this.time(),
      offers: this.offers(index),
      tests: tests.slice(0, mostListed).map((test) => this.told(test)),
    });
  }

  find(unit: string, test: string): Result<GuidedTest, GuidedDeskFault> {
    const { pipeline } = this.scene;
    if (pipeline.site.units.every(({ id }) => id !== unit)) return fail(noUnit);
    const found = pipeline.guidedTests().find((one) => one.id === test && one.unit === unit);
    if (found !== undefined) return ok(this.told(found));
    return fail({ code: 'GUIDED_UNKNOWN', message: `unit ${unit} has no test ${test}; look at the list again` });
  }

  start(
    unit: string,
    { kind, settings, comment }: StartGuidedRequest,
    actor: Actor,
  ): Result<GuidedTest, GuidedDeskFault> {
    return this.act({ act: 'start', unit, kind, settings, comment, operator: actor.name, station: actor.station });
  }

  confirm(
    unit: string,
    test: string,
    { step, given, comment }: ConfirmGuidedRequest,
    actor: Actor,
  ): Result<GuidedTest, GuidedDeskFault> {
    const { name: operator, station, byToken } = actor;
    const by = byToken === undefined ? {} : { byToken };
    return this.act({ act: 'confirm', unit, test, step, given, comment, operator, station, ...by });
  }

  cancel(
    unit: string,
    test: string,
    { comment }: CancelGuidedRequest,
    actor: Actor,
  ): Result<GuidedTest, GuidedDeskFault> {
    return this.act({ act: 'cancel', unit, test, comment, operator: actor.name, station: actor.station });
  }

  private rise(unit: string, index: number): GuidedSurvey['units'][number]['rise'] {
    const { pipeline } = this.scene;
    const own = [...pipeline.tightnessTests()].filter((test) => test.unit === unit);
    const running = own.find(({ endedFor }) => endedFor === null)?.id ?? null;
    const last = own.filter(({ endedFor }) => endedFor !== null).sort((a, b) => b.startedMs - a.startedMs)[0];
    return {
      running,
      refusals: running === null ? pipeline.tightnessRefusals(index).map((one) => ({ ...one })) : [],
      last:
        last === undefined
          ? null
          : {
              id: last.id,
              endedAt: last.endedMs === null ? null : timeText(last.endedMs),
              verdict: last.verdict,
            },
    };
  }

  private act(action: GuidedAction): Result<GuidedTest, GuidedDeskFault> {
    const outcome = this.scene.pipeline.actOnGuided(action, this.nowMs(), (change) =>
      this.changes.recordGuided(change, this.clock.wallMs()),
    );
    if (outcome.ok) return ok(this.told(outcome.change.test));
    const { code, message } = outcome;
    return fail(code === 'ACTION_NOT_RECORDED' ? journalUnavailable : { code, message });
  }

  private told(record: GuidedRecord): GuidedTest {
    return toGuidedTest(record, this.scene.pipeline.guidedNow(record, this.nowMs()));
  }

  private offers(unitIndex: number): GuidedOffer[] {
    return Object.values(guidedTable).map(({ kind, title, about, criterion, cautions }) => ({
      kind,
      title,
      about,
      criterion,
      cautions: [...cautions, ...guidedCautions],
      asks: this.scene.pipeline.guidedAsks(unitIndex, kind).map((asked) => ({ ...asked })),
      steps: this.scene.pipeline.guidedSteps(unitIndex, kind).map((step) => ({ ...step })),
      refusals: [...this.scene.pipeline.guidedRefusals(unitIndex, kind)],
    }));
  }

  private time(): string {
    return timeText(this.nowMs()) ?? new Date(0).toISOString();
  }

  /** On the source clock there is no time before the first sample. */
  private nowMs(): number {
    const nowMs = this.scene.nowMs();
    return Number.isNaN(nowMs) ? this.clock.wallMs() : nowMs;
  }
}

const titleOf = ({ kind }: GuidedRecord): string => guidedTable[kind].title;

const newestFirst = (tests: readonly GuidedRecord[]): GuidedRecord[] =>
  [...tests].sort((a, b) => b.startedMs - a.startedMs);

const noUnit = { code: 'UNIT_UNKNOWN', message: 'The site has no unit of this id; /api/units lists them.' } as const;
