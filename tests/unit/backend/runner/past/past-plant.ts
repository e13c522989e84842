import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SqliteAlarmJournal } from '../../../../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { createPipeline } from '../../../../../backend/src/evaluation/pipeline/create-pipeline';
import { alarmTexts } from '../../../../../backend/src/evaluation/pipeline/alarm-texts';
import type { CompiledHall } from '../../../../../backend/src/evaluation/site/compiled-site';
import { RunnerPastDesk } from '../../../../../backend/src/runner/past/past-desk';
import { RecordedAlarms } from '../../../../../backend/src/runner/recorded-alarms';
import type { PictureScene } from '../../../../../backend/src/runner/views/scene';
import { toHallTrails } from '../../../../../backend/src/runner/views/to-hall-trails';
import { toHallPicture } from '../../../../../backend/src/runner/views/to-hall-frame';
import { toLoopPicture } from '../../../../../backend/src/runner/views/to-loop-frame';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { Plant, plantSite, startMs } from '../../evaluation/pipeline/plant';

/** A plant whose judge writes history and journal as the runner does, and can show what it shows at any second. */
export class PastPlant {
  readonly plant = new Plant(plantSite({ units: ['m1', 'm2'] }));
  readonly history = historyInMemory(this.plant.site);
  private readonly folder = mkdtempSync(join(tmpdir(), 'past-'));
  readonly journal = new SqliteAlarmJournal(join(this.folder, 'journal.sqlite'));
  private readonly alarms = new RecordedAlarms(this.journal, () => [
    ...this.plant.pipeline.standing(),
    ...this.plant.pipeline.setAside(),
  ]);
  readonly desk = new RunnerPastDesk({
    site: () => this.plant.site,
    store: this.history,
    journal: this.journal,
    nowMs: () => this.plant.nowMs,
    clock: 'source',
  });

  get hall(): CompiledHall {
    const [hall] = this.plant.site.halls;
    if (hall === undefined) throw new Error('the plant has no hall');
    return hall;
  }

  /** The program is ended, and begins again after so many seconds with what the journal holds. */
  restartAfter(seconds: number): this {
    const { plant } = this;
    const rows = plant.pipeline.drainHistory(plant.nowMs, true);
    if (rows !== null) this.history.write(rows);
    plant.second += seconds;
    plant.pipeline = createPipeline(plant.site, { clock: 'wall', startMs: plant.nowMs });
    plant.pipeline.restore(this.journal.standing());
    const program = { version: '1', before: null };
    this.journal.appendProgram({ cause: 'programStarted', program, reason: 'Ebbline began again' }, plant.nowMs);
    return this;
  }

  /** Judges each second, then takes what is measured in it. */
  run(seconds: number): this {
    const { plant } = this;
    for (let i = 0; i < seconds; i += 1) {
      plant.second += 1;
      this.alarms.record(plant.pipeline.advance(plant.nowMs), plant.nowMs);
      this.alarms.follow(plant.nowMs);
      this.journal.appendAlerts(plant.pipeline.takeAlertChanges(), plant.nowMs);
      plant.send('hall/air', plant.air);
      for (const [id, telemetry] of Object.entries(plant.telemetry))
        if (!plant.silent.has(id)) plant.send(`plant/${id}`, { time: plant.nowMs, ...telemetry });
      const rows = plant.pipeline.drainHistory(plant.nowMs, false);
      if (rows !== null) this.history.write(rows);
    }
    return this;
  }

  openPermit(): void {
    const action = {
      kind: 'openPermit',
      unit: 'm1',
      branch: 'r1',
      untilMs: this.plant.nowMs + 30_000,
      expectedInLeakM3PerS: 5e-4,
      operator: 'Ines',
      station: 'desk',
      comment: '',
    } as const;
    const done = this.plant.pipeline.actOnPermit(action, this.plant.nowMs, (change) => {
      this.journal.appendPermits([change], this.plant.nowMs);
      return true;
    });
    if (!done.ok) throw new Error(done.message);
  }

  /** A person shelves an alarm, standing or not. */
  shelve(alarm: string): void {
    const { nowMs, pipeline } = this.plant;
    const action = {
      kind: 'shelve',
      alarm,
      operator: 'Ines',
      station: 'desk',
      comment: 'seen to',
      forMs: 600_000,
    } as const;
    const done = pipeline.act(action, nowMs, (transition, record) =>
      this.alarms.recordAction(transition, record, nowMs),
    );
    if (!done.ok) throw new Error(done.message);
  }

  /** What the live screens would draw at the end of the second under way. */
  live() {
    const { pipeline, nowMs } = this.plant;
    const scene: PictureScene = {
      pipeline,
      nowMs: () => nowMs + 999,
      clock: () => ({ kind: 'source', now: new Date(nowMs + 999).toISOString() }),
      alarms: () => this.alarms.list(),
      setAside: () => this.alarms.setAside(),
      textsOf: (record) => alarmTexts(this.plant.site, record),
    };
    return { atMs: nowMs, hall: toHallPicture(scene, this.hall), unit: toLoopPicture(scene, 0) };
  }

  /** The last hour as the live screen would draw it. */
  liveTrails(): HallTrails {
    const { pipeline, nowMs } = this.plant;
    return toHallTrails({ pipeline, nowMs: () => nowMs + 999 }, this.hall);
  }

  close(): void {
    this.journal.close();
    rmSync(this.folder, { recursive: true });
  }
}

export const atSecond = (second: number): number => startMs + second * 1000;
