import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { HandOverRequest, Handover, TakeOverRequest } from '@ebbline/shared/contract/handover';
import {
  mostNotes,
  type Note,
  type NoteCorrectionRequest,
  type NoteList,
  type NoteRequest,
  type NoteWithdrawalRequest,
} from '@ebbline/shared/contract/notes';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { AlarmJournal } from '../../ports/alarm-journal';
import type { Actor } from '../../ports/identity';
import type { NoteDesk, NoteDeskFault, NotesWanted } from '../../ports/note-desk';
import type { NoteEntry } from '../../ports/note-entry';
import { journalUnavailable } from '../journal-unavailable';
import { isOfPlace, placeOf, type PlacesOfSite } from './place-of-note';
import { sequenceOf, toNotes } from './to-notes';
import { toHandovers } from './to-handovers';

export interface NoteDeskParts {
  readonly journal: Pick<AlarmJournal, 'appendNotes' | 'notes'>;
  readonly site: () => PlacesOfSite;
  /** Time in force, ms. */
  readonly nowMs: () => number;
  /** Time of record, ms. */
  readonly wallMs: () => number;
}

type Answer<Value> = Result<Value, NoteDeskFault>;

const minute = 60_000;
const year = 366 * 86_400_000;
/** A shift may be handed over so long before it ends. */
const mostAhead = 12 * 60 * minute;
const longestShift = 7 * 86_400_000;

/** Notes and handovers as rows of the journal. Nothing is kept beside it. */
export class JournalNoteDesk implements NoteDesk {
  constructor(private readonly parts: NoteDeskParts) {}

  notes(wanted: NotesWanted): Answer<NoteList> {
    const place = placeOf(this.parts.site(), wanted);
    if (!place.ok) return place;
    const { fromMs, toMs } = wanted;
    const found = toNotes(this.parts.journal.notes(fromMs, toMs)).filter((note) => {
      const aboutMs = Date.parse(note.about);
      return aboutMs >= fromMs && aboutMs < toMs && isOfPlace(note, place.value);
    });
    const time = new Date(this.nowMs()).toISOString();
    return ok({ time, notes: found.slice(-mostNotes), more: found.length > mostNotes });
  }

  write({ text, about, hall, unit, alarm }: NoteRequest, actor: Actor): Answer<Note> {
    const place = placeOf(this.parts.site(), { hall, unit });
    if (!place.ok) return place;
    const nowMs = this.nowMs();
    const atMs = about === null ? nowMs : Date.parse(about);
    if (atMs > nowMs + minute || atMs < nowMs - year) return fail(noSuchTime);
    return this.append({ ...blank, ...place.value, ...by(actor), cause: 'noteWritten', atMs, alarm, text }, firstNote);
  }

  correct(id: string, { text, reason }: NoteCorrectionRequest, actor: Actor): Answer<Note> {
    const found = this.inForce(id);
    if (!found.ok) return found;
    const { about, hall, unit, alarm } = found.value;
    const of = { ...blank, hall, unit, alarm, of: sequenceOf(id, 'n'), why: reason };
    return this.append({ ...of, ...by(actor), cause: 'noteCorrected', atMs: Date.parse(about), text }, firstNote);
  }

  withdraw(id: string, { reason }: NoteWithdrawalRequest, actor: Actor): Answer<Note> {
    const found = this.inForce(id);
    if (!found.ok) return found;
    const { hall, unit, alarm } = found.value;
    const atMs = this.nowMs();
    const of = { ...blank, hall, unit, alarm, of: sequenceOf(id, 'n'), atMs };
    return this.append({ ...of, ...by(actor), cause: 'noteWithdrawn', text: reason }, ([row]) =>
      row === undefined
        ? undefined
        : { ...found.value, withdrawn: { by: row.actor ?? '', at: row.sourceTime, reason: row.reason ?? '' } },
    );
  }

  handovers({ fromMs, toMs, hall }: Omit<NotesWanted, 'unit'>): readonly Handover[] {
    // A shift that ends in the period may have been handed over before it.
    return this.allHandovers(fromMs - mostAhead).filter(
      (one) => one.hall === hall && Date.parse(one.to) > fromMs && Date.parse(one.from) < toMs,
    );
  }

  handOver({ hall, from, to, takerNamed, text }: HandOverRequest, actor: Actor): Answer<Handover> {
    const place = placeOf(this.parts.site(), { hall, unit: null });
    if (!place.ok) return place;
    const [fromMs, toMs, atMs] = [Date.parse(from), Date.parse(to), this.nowMs()];
    const sound = toMs > fromMs && toMs - fromMs <= longestShift && fromMs <= atMs && toMs <= atMs + mostAhead;
    if (!sound) return fail(noSuchShift);
    if (takerNamed === actor.name) return fail(samePerson);
    const shift = { from: new Date(fromMs).toISOString(), to: new Date(toMs).toISOString(), takerNamed };
    const entry = { ...blank, ...by(actor), cause: 'shiftHandedOver', hall, atMs, text, shift } as const;
    return this.append(entry, (rows) => toHandovers(rows)[0]);
  }

  takeOver(id: string, { text }: TakeOverRequest, actor: Actor): Answer<Handover> {
    const found = this.allHandovers(Number.MIN_SAFE_INTEGER).find((one) => one.id === id);
    if (found === undefined) return fail(noHandover);
    if (found.taken !== null) return fail(takenAlready(found.taken.by));
    if (found.by === actor.name) return fail(samePerson);
    const { hall } = found;
    const of = { ...blank, hall, of: sequenceOf(id, 'h'), atMs: this.nowMs() };
    return this.append({ ...of, ...by(actor), cause: 'shiftTakenOver', text }, ([row]) => {
      const { actor: taker, station, sourceTime: at, reason } = row ?? {};
      return { ...found, taken: { by: taker ?? '', station: station ?? '', at: at ?? '', text: reason ?? '' } };
    });
  }

  private allHandovers(fromMs: number): readonly Handover[] {
    return toHandovers(this.parts.journal.notes(fromMs, Number.MAX_SAFE_INTEGER));
  }

  private inForce(id: string): Answer<Note> {
    const all = toNotes(this.parts.journal.notes(Number.MIN_SAFE_INTEGER, Number.MAX_SAFE_INTEGER));
    const note = all.find((one) => one.id === id);
    if (note === undefined) return fail(noNote);
    if (note.correctedBy !== null) return fail(correctedAlready(note.correctedBy));
    return note.withdrawn === null ? ok(note) : fail(withdrawnAlready(note.withdrawn.by));
  }

  /** Committed, and shown as the journal has it; or nothing is done. */
  private append<Value>(entry: NoteEntry, shown: (rows: readonly JournalRow[]) => Value | undefined): Answer<Value> {
    try {
      const value = shown(this.parts.journal.appendNotes([entry], this.parts.wallMs()));
      return value === undefined ? fail(journalUnavailable) : ok(value);
    } catch (fault) {
      if (fault instanceof CodedError) return fail(journalUnavailable);
      throw fault;
    }
  }

  /** On the source clock there is no time before the first sample. */
  private nowMs(): number {
    const nowMs = this.parts.nowMs();
    return Number.isNaN(nowMs) ? this.parts.wallMs() : nowMs;
  }
}

const blank = { hall: null, unit: null, alarm: null, of: null, why: null, shift: null } as const;
const by = ({ name: actor, station }: Actor): Pick<NoteEntry, 'actor' | 'station'> => ({ actor, station });
const firstNote = (rows: readonly JournalRow[]): Note | undefined => toNotes(rows)[0];

const noSuchTime = {
  code: 'NOTE_TIME',
  message: 'A note speaks of now or of a time gone by, a year ago at most; give such a time.',
} as const;
const noSuchShift = {
  code: 'HANDOVER_TIME',
  message: 'A shift has begun, ends within the next 12 h at the latest, and lasts 7 days at most; give such times.',
} as const;
const noNote = {
  code: 'NOTE_UNKNOWN',
  message: 'No note of this id can be found; GET /api/notes lists them.',
} as const;
const noHandover = {
  code: 'HANDOVER_UNKNOWN',
  message: 'No handover of this id can be found; see the report.',
} as const;
const samePerson = {
  code: 'HANDOVER_SAME_PERSON',
  message: 'A shift is handed over by one person and taken over by another; the other one is to sign in.',
} as const;
const correctedAlready = (by: string) =>
  ({
    code: 'NOTE_CORRECTED_ALREADY',
    message: `Note ${by} stands in its place; correct or withdraw that one.`,
  }) as const;
const withdrawnAlready = (name: string) =>
  ({ code: 'NOTE_WITHDRAWN_ALREADY', message: `${name} has withdrawn it already; write a new note.` }) as const;
const takenAlready = (name: string) =>
  ({ code: 'HANDOVER_TAKEN_ALREADY', message: `${name} has taken it over already; hand over anew.` }) as const;
