import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import type { PastHall, PastMarks, PastUnit } from '@ebbline/shared/contract/past';
import type { ClockState } from '@ebbline/shared/contract/http-api';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { oldestSampleMs } from '../../evaluation/pipeline/hand/check-typed';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { AlarmJournal } from '../../ports/alarm-journal';
import type { HistoryStore } from '../../ports/history-store';
import type { MarksWanted, PastDesk, PastFault } from '../../ports/past-desk';
import type { PictureScene } from '../views/scene';
import { timeText } from '../views/time-text';
import { toHallPicture } from '../views/to-hall-frame';
import { toLoopPicture } from '../views/to-loop-frame';
import { FewAtOnce } from './few-at-once';
import { gapsOf } from './gaps';
import { extremesOf, hourBefore } from './hour-before';
import { marksOf } from './marks';
import { notesOf } from './past-notes';
import { pastScene } from './past-scene';
import { pastValues } from './past-values';
import { readMoment } from './read-moment';
import { toPastTrails } from './to-past-trails';

export interface PastParts {
  readonly site: () => CompiledSite;
  readonly store: Pick<HistoryStore, 'read' | 'readSeconds' | 'readTogether' | 'readMinute' | 'waitingFromMs'>;
  readonly journal: Pick<AlarmJournal, 'standingAt' | 'hand' | 'page'>;
  /** Time in force, ms; NaN before there is one. */
  readonly nowMs: () => number;
  readonly clock: ClockState['kind'];
}

/** A second is asked for once its rows are sure to be written, ms after its begin. */
const settledMs = 4000;
const minuteMs = 60_000;

/** Past seconds, put together when asked; a few at once, since each reads history for every unit that it shows. */
export class RunnerPastDesk implements PastDesk {
  private readonly few = new FewAtOnce();
  /** Apart, so that no moment waits for an hour. */
  private readonly hours = new FewAtOnce(1);

  constructor(private readonly parts: PastParts) {}

  async hall(id: string, atMs: number): Promise<Result<PastHall, PastFault>> {
    const site = this.parts.site();
    const hall = site.halls.find((one) => one.id === id);
    if (hall === undefined) return fail(unknownHall);
    const holders = [hall.holder, ...hall.units.map((unit) => site.units[unit]?.holder ?? -1)];
    const shown = await this.moment(site, 'hall', holders, atMs);
    if (!shown.ok) return shown;
    const { scene, ...moment } = shown.value;
    return ok({ ...moment, frame: toHallPicture(scene, hall) });
  }

  async unit(id: string, atMs: number): Promise<Result<PastUnit, PastFault>> {
    const site = this.parts.site();
    const at = site.units.findIndex((one) => one.id === id);
    const unit = site.units[at];
    if (unit === undefined) return fail(unknownUnit);
    const shown = await this.moment(site, 'loop', [site.halls[unit.hall]?.holder ?? -1, unit.holder], atMs);
    if (!shown.ok) return shown;
    const { scene, ...moment } = shown.value;
    return ok({ ...moment, frame: toLoopPicture(scene, at) });
  }

  /** An hour of many units is a long read: it is asked for apart from the moment, which does not wait for it. */
  async trails(id: string, askedMs: number): Promise<Result<HallTrails, PastFault>> {
    const site = this.parts.site();
    const hall = site.halls.find((one) => one.id === id);
    if (hall === undefined) return fail(unknownHall);
    const atMs = Math.floor(askedMs / 1000) * 1000;
    const early = this.tooEarly(atMs);
    if (early !== null) return fail(early);
    return this.hours.run(async () => {
      const hours = await hourBefore(this.parts.store, site, hall.units, atMs + 1000);
      return ok(toPastTrails(site, hall, hours, atMs));
    });
  }

  async marks(wanted: MarksWanted): Promise<Result<PastMarks, PastFault>> {
    const site = this.parts.site();
    const { hall, unit, fromMs, toMs } = wanted;
    if (hall !== null && !site.halls.some(({ id }) => id === hall)) return fail(unknownHall);
    if (unit !== null && !site.units.some(({ id }) => id === unit)) return fail(unknownUnit);
    const nowMs = this.nowMs();
    return this.few.run(async () => {
      const untilMs = Math.min(toMs, Number.isNaN(nowMs) ? toMs : nowMs - settledMs);
      const gaps = untilMs > fromMs ? await gapsOf(this.parts.store, site, wanted, untilMs) : [];
      const { marks, more } = await marksOf(this.parts.journal, site, wanted);
      return ok({ from: iso(fromMs), to: iso(toMs), now: iso(nowMs), marks, more, gaps });
    });
  }

  /** What stood at a second, for some holders. */
  private moment(
    site: CompiledSite,
    picture: 'hall' | 'loop',
    holders: readonly number[],
    askedMs: number,
  ): Promise<Result<Omit<PastHall, 'frame'> & { readonly scene: PictureScene }, PastFault>> {
    const atMs = Math.floor(askedMs / 1000) * 1000;
    const nowMs = this.nowMs();
    const early = this.tooEarly(atMs);
    if (early !== null) return Promise.resolve(fail(early));
    return this.few.run(async () => {
      const { journal, store, clock } = this.parts;
      const read = await readMoment(store, site, holders, picture, atMs, nowMs);
      if (!read.ok) return read;
      const { recorded, silent, resolution } = read.value;
      const fromMs = resolution === 'second' ? atMs : Math.floor(atMs / minuteMs) * minuteMs;
      const endMs = fromMs + (resolution === 'second' ? 1000 : minuteMs) - 1;
      const standing = journal.standingAt(endMs);
      if (standing === null) return fail(sealed);
      const values = pastValues(site, recorded, journal.hand(fromMs - oldestSampleMs), endMs);
      const hasHour = picture === 'loop' && resolution === 'second';
      const units = site.units.flatMap(({ holder }, at) => (hasHour && holders.includes(holder) ? [at] : []));
      const trails = await hourBefore(store, site, units, endMs + 1);
      const hour = new Map([...trails].map(([unit, trail]) => [unit, extremesOf(trail)]));
      const scene = pastScene({ site, values, standing, nowMs: endMs, clock, hour });
      const notes = notesOf(store, atMs, resolution);
      return ok({ at: iso(fromMs), now: iso(nowMs), resolution, silent, notes, scene });
    });
  }

  private tooEarly(atMs: number): PastFault | null {
    const nowMs = this.nowMs();
    if (atMs + settledMs <= nowMs) return null;
    const message = `That time is not recorded yet; ask for one that is at least ${settledMs / 1000} s gone. It is ${iso(nowMs)}.`;
    return { code: 'PAST_NOT_YET', message };
  }

  private nowMs(): number {
    return this.parts.nowMs();
  }
}

const unknownHall: PastFault = {
  code: 'HALL_UNKNOWN',
  message: 'The site has no hall of this id; /api/site lists them.',
};
const unknownUnit: PastFault = {
  code: 'UNIT_UNKNOWN',
  message: 'The site has no unit of this id; /api/units lists them.',
};
const sealed: PastFault = {
  code: 'PAST_NOT_KEPT',
  message: 'Alarms of that time were sealed into files and can not be shown with the values; choose a later time.',
};

const iso = (ms: number): string => timeText(ms) ?? new Date(0).toISOString();
