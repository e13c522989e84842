import { describe, expect, it } from 'vitest';
import type { SystemState } from '../../../../../backend/src/evaluation/alarm-rules/system-state';
import { createPipeline } from '../../../../../backend/src/evaluation/pipeline/create-pipeline';
import type { AlarmRecord, AlarmTransition } from '../../../../../backend/src/evaluation/pipeline/outputs';
import { plantSite, startMs } from './plant';

const well: SystemState = {
  evaluationLagS: 0.05,
  threadDelayS: 0.02,
  journalTrouble: null,
  unrecorded: 0,
  historyTrouble: null,
  freeBytes: 100e9,
  diskBytes: 250e9,
};

/** A plant of which nothing is heard; what is told of the plant itself is left out. */
class Program {
  private readonly pipeline = createPipeline(plantSite(), { clock: 'wall', startMs });
  private nowMs = startMs;

  /** Tells its state each second for so long. */
  run(seconds: number, more: Partial<SystemState> = {}): AlarmTransition[] {
    const seen: AlarmTransition[] = [];
    for (let second = 0; second < seconds; second += 1) {
      this.nowMs += 1000;
      const told = this.pipeline.advance(this.nowMs, { ...well, ...more });
      seen.push(...told.filter(({ entry }) => entry.startsWith('SYS-')));
    }
    return seen;
  }

  standing(entry: string): AlarmRecord | undefined {
    return this.pipeline.standing().find((record) => record.entry === entry);
  }

  get itself() {
    return this.pipeline;
  }
}

const changes = (seen: readonly AlarmTransition[]): readonly string[] => seen.map(({ entry, to }) => `${entry} ${to}`);

describe('alarms about the program itself', () => {
  it('are none while it is well, and none before it has told anything of itself', () => {
    expect(new Program().run(50)).toEqual([]);
    const silent = createPipeline(plantSite(), { clock: 'wall', startMs });
    expect(silent.advance(startMs + 40_000)).toEqual([]);
  });

  it('stand in no unit and no hall, and name the program', () => {
    const program = new Program();
    program.run(5, { journalTrouble: 'the disk is full', unrecorded: 3 });
    expect(program.standing('SYS-2')).toMatchObject({
      alarm: 'program:SYS-2',
      unit: null,
      hall: null,
      where: 'this program',
      state: 'unacknowledged',
      priority: 3,
      detail: 'Changes that wait to be recorded: 3.',
    });
  });

  it('go through the same lifecycle as any other', () => {
    const program = new Program();
    program.run(5, { journalTrouble: 'the disk is full' });
    const by = { operator: 'A. Person', station: 'test', comment: '' };
    const outcome = program.itself.act({ kind: 'acknowledge', alarm: 'program:SYS-2', ...by }, startMs + 6000);
    expect(outcome.ok && outcome.transition.to).toBe('acknowledged');
    expect(changes(program.run(5))).toEqual(['SYS-2 normal']);
  });

  it('say that evaluation is late once it has been for half a minute, not at a hiccup', () => {
    const program = new Program();
    expect(program.run(25, { evaluationLagS: 4 })).toEqual([]);
    expect(program.run(5)).toEqual([]);
    expect(changes(program.run(35, { evaluationLagS: 4 }))).toEqual(['SYS-1 unacknowledged']);
    expect(program.standing('SYS-1')).toMatchObject({ priority: 2, detail: 'Judged 4.0 s late.' });
    expect(program.run(30, { evaluationLagS: 1.5 })).toEqual([]);
    expect(changes(program.run(15))).toEqual(['SYS-1 returnedUnacknowledged']);
  });

  it('fold a late thread under late evaluation, which it is the cause of, whichever is told first', () => {
    const program = new Program();
    program.run(35, { threadDelayS: 3 });
    expect(program.standing('SYS-5')).toMatchObject({ priority: 3, foldedUnder: null });
    program.run(35, { threadDelayS: 3, evaluationLagS: 3 });
    expect(program.standing('SYS-5')?.foldedUnder).toBe('program:SYS-1');
    program.run(15, { threadDelayS: 3 });
    expect(program.standing('SYS-5')?.foldedUnder).toBeNull();
  });

  it('say that history is not written once it has been refused for half a minute', () => {
    const program = new Program();
    expect(program.run(25, { historyTrouble: 'the server does not answer' })).toEqual([]);
    expect(changes(program.run(10, { historyTrouble: 'the server does not answer' }))).toEqual([
      'SYS-3 unacknowledged',
    ]);
    expect(changes(program.run(15))).toEqual(['SYS-3 returnedUnacknowledged']);
  });
});

/** Limits by the smaller of a share of the disk and a fixed room: common practice, no source. */
describe('a disk that fills', () => {
  it.each([
    ['of 250 GB', 250e9, 10e9, 2e9],
    ['of 20 GB', 20e9, 2e9, 0.6e9],
  ])(
    '%s is an alert at first, an alarm when little is left, and over with a fifth more room',
    (_, disk, told, urgent) => {
      const program = new Program();
      const free = (freeBytes: number) => ({ freeBytes, diskBytes: disk });
      program.run(20, free(told * 1.01));
      expect(program.itself.alerts()).toEqual([]);
      expect(program.run(20, free(told * 0.99))).toEqual([]);
      expect(program.itself.alerts().map(({ entry }) => entry)).toEqual(['SYS-4']);
      expect(changes(program.run(5, free(urgent * 0.99)))).toEqual(['SYS-4 unacknowledged']);
      expect(program.standing('SYS-4')?.priority).toBe(3);
      expect(program.itself.alerts()).toEqual([]);
      expect(program.run(90, free(told * 1.19))).toEqual([]);
      expect(changes(program.run(70, free(told * 1.21)))).toEqual(['SYS-4 returnedUnacknowledged']);
    },
  );

  it('of which the system tells nothing is not judged', () => {
    const program = new Program();
    expect(program.run(30, { freeBytes: Number.NaN, diskBytes: Number.NaN })).toEqual([]);
    expect(program.itself.alerts()).toEqual([]);
  });
});
