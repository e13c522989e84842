import type { AlarmState } from '@ebbline/shared/contract/alarm';
import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';
import type { AlarmRecord } from '../alarm-lifecycle/alarm-record';
import { stateFacts } from '../alarm-lifecycle/states';
import type { Annunciation, Standing } from './annunciation';
import type { JournalStep } from './journal-step';

/** Of the record of an alarm what tells whether it stands before the operator. */
export type StoodBefore = Pick<
  AlarmRecord,
  'alarm' | 'entry' | 'unit' | 'hall' | 'state' | 'mode' | 'foldedUnder' | 'sinceMs'
>;

/** An alarm as the rows read so far leave it. */
interface Track {
  state: AlarmState;
  mode: AlarmMode;
  foldedUnder: string | null;
  /** Since when it stands before the operator; NaN: it does not. */
  standsMs: number;
  /** As last told; null: it has not been told since it was normal, or it was set aside. */
  told: Annunciation | null;
}

/**
 * What one operator was told, from the rows of the journal in their order.
 *
 * An annunciation is a passage into `unacknowledged` of an alarm that is in service and under no first-out: what follows
 * from a first-out is suppressed by design, shown with it and counted apart (`folded`). An alarm that came folded
 * and comes out from under its first-out unacknowledged is told from then on, and counted then. ANSI/ISA-18.2-2016 and
 * IEC 62682 count what is presented to the operator, not rows.
 */
export class AlarmHistory {
  /** In order of the rows. */
  readonly annunciations: Annunciation[] = [];
  readonly standings: Standing[] = [];
  /** When consequences came that were told with their first-out, ms. */
  readonly foldedMs: number[] = [];
  /** When an alarm was set aside, or a setting changed, by nobody, ms. */
  readonly unauthorisedMs: number[] = [];
  /** Earliest time of any row, as a clock that ran ahead may have written the first; NaN before one. */
  firstMs = Number.NaN;
  /** Time of the last row that has one of its own; NaN before one. */
  private lastMs = Number.NaN;
  private readonly tracks = new Map<string, Track>();
  private readonly places = new Map<string, { readonly entry: string; readonly unit: string | null }>();

  /** @param hall only alarms of this hall; null: of the whole site, and those of the program itself */
  constructor(private readonly hall: string | null) {}

  take(step: JournalStep): void {
    if (!(this.firstMs <= step.atMs)) this.firstMs = step.atMs;
    // A system row says how an alarm stands; it has no time of its own and belongs to the row before it.
    const atMs = step.kind === 'system' && !Number.isNaN(this.lastMs) ? this.lastMs : step.atMs;
    if (step.kind !== 'system') this.lastMs = step.atMs;
    if (this.hall !== null && step.hall !== this.hall) return;
    if (step.cause === 'settingChanged' && isNobody(step.actor)) this.unauthorisedMs.push(atMs);
    if (step.alarm !== null && step.to !== null) this.move(step, step.alarm, step.to, atMs);
  }

  /** An alarm as it stands after the last row; where no row told of it, it has stood since before the first. To be told before `end`. */
  stood(record: StoodBefore): void {
    if (this.hall !== null && record.hall !== this.hall) return;
    const toldOf =
      isToldState(record.state) && record.foldedUnder === null && (record.mode ?? 'inService') === 'inService';
    if (!toldOf || this.tracks.has(record.alarm)) return;
    const { alarm, entry, unit, state, sinceMs } = record;
    this.tracks.set(alarm, { state, mode: 'inService', foldedUnder: null, standsMs: sinceMs, told: null });
    this.places.set(alarm, { entry, unit });
  }

  /** Ends what still stands, so that it is told of; once, after the last row. */
  end(): void {
    for (const [alarm, track] of this.tracks) this.leave(alarm, track, Number.POSITIVE_INFINITY);
  }

  /** Lets go of what was told and had ended before a time: for who follows the rows for months. */
  forget(beforeMs: number): void {
    keepFrom(this.annunciations, ({ atMs }) => atMs >= beforeMs);
    keepFrom(this.standings, ({ toMs }) => toMs >= beforeMs);
    keepFrom(this.foldedMs, (atMs) => atMs >= beforeMs);
    keepFrom(this.unauthorisedMs, (atMs) => atMs >= beforeMs);
  }

  private move(step: JournalStep, alarm: string, to: AlarmState, atMs: number): void {
    const track = this.trackOf(step, alarm);
    const mode = step.mode ?? (to === 'normal' && track.mode === 'suppressedByDesign' ? 'inService' : track.mode);
    if (bySomeone.includes(mode) && mode !== track.mode && isNobody(step.actor)) this.unauthorisedMs.push(atMs);
    const before = { ...track };
    Object.assign(track, { state: to, mode, foldedUnder: step.foldedUnder });
    this.follow(track, before, step, atMs);
    if (mode !== 'inService' || to === 'normal') track.told = null;
    if (track.told !== null && track.foldedUnder !== null) track.told.foldedLater = true;
    const stands = isToldState(to) && mode === 'inService' && track.foldedUnder === null;
    if (!stands) this.leave(alarm, track, atMs);
    else if (Number.isNaN(track.standsMs)) track.standsMs = atMs;
    this.places.set(alarm, { entry: step.entry ?? '', unit: step.unit });
  }

  private trackOf(step: JournalStep, alarm: string): Track {
    let track = this.tracks.get(alarm);
    if (track === undefined) {
      const state = step.from ?? 'normal';
      // It came before the first row that is kept.
      const standsMs = isToldState(state) && step.foldedUnder === null ? (step.sinceMs ?? step.atMs) : Number.NaN;
      track = { state, mode: 'inService', foldedUnder: null, standsMs, told: null };
      this.tracks.set(alarm, track);
    }
    return track;
  }

  private follow(track: Track, before: Track, step: JournalStep, atMs: number): void {
    const { told } = track;
    const raised = step.kind !== 'system' && track.state === 'unacknowledged';
    if (told !== null && track.mode === 'inService') {
      if (stateFacts[before.state].active && !stateFacts[track.state].active) told.clearedMs ??= atMs;
      const seen = !stateFacts[before.state].acknowledged && stateFacts[track.state].acknowledged;
      if (seen) told.acknowledgedMs ??= atMs;
    }
    if (track.mode !== 'inService') return;
    if (raised && track.foldedUnder !== null) this.foldedMs.push(atMs);
    const cameOut = before.foldedUnder !== null && told === null && track.state === 'unacknowledged';
    if ((raised || cameOut) && track.foldedUnder === null) track.told = this.annunciate(step, atMs);
    else if (raised) track.told = null;
  }

  private annunciate({ alarm, entry, unit, hall, priority }: JournalStep, atMs: number): Annunciation {
    const annunciation: Annunciation = {
      atMs,
      alarm: alarm ?? '',
      entry: entry ?? '',
      unit,
      hall,
      priority: priority ?? 3,
      acknowledgedMs: null,
      clearedMs: null,
      foldedLater: false,
    };
    this.annunciations.push(annunciation);
    return annunciation;
  }

  private leave(alarm: string, track: Track, toMs: number): void {
    if (Number.isNaN(track.standsMs)) return;
    const place = this.places.get(alarm) ?? { entry: '', unit: null };
    this.standings.push({ alarm, ...place, fromMs: track.standsMs, toMs });
    track.standsMs = Number.NaN;
  }
}

function keepFrom<T>(list: T[], stays: (one: T) => boolean): void {
  const kept = list.filter(stays);
  list.length = 0;
  for (const one of kept) list.push(one);
}

const bySomeone: readonly AlarmMode[] = ['shelved', 'outOfService'];
const isNobody = (actor: string | null): boolean => actor === null || actor.trim() === '';

/** What calls for a person: the condition holds, or stays latched. What has returned by itself is no longer standing. */
const isToldState = (state: AlarmState): boolean => stateFacts[state].active || stateFacts[state].latched;
