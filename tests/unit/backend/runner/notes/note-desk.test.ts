import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { Result } from '@ebbline/shared/errors/result';
import { beforeEach, describe, expect, it } from 'vitest';
import { followingCauses, type NoteEntry } from '../../../../../backend/src/ports/note-entry';
import { JournalNoteDesk } from '../../../../../backend/src/runner/notes/note-desk';

const startMs = Date.UTC(2031, 4, 6, 12);
const hour = 3_600_000;
const time = (ms: number): string => new Date(ms).toISOString();
const ines = { name: 'Ines', station: '127.0.0.1' };
const omar = { name: 'Omar', station: '10.0.0.9' };
const site = {
  halls: [{ id: 'north' }, { id: 'south' }],
  units: [
    { id: 'n1', hall: 0 },
    { id: 's1', hall: 1 },
  ],
};

let rows: JournalRow[] = [];
let nowMs = startMs;
let full = false;

/** Keeps rows as the journal of the contract tests does. */
const journal = {
  appendNotes(entries: readonly NoteEntry[], wallMs: number): readonly JournalRow[] {
    if (full) throw new CodedError('JOURNAL_WRITE_FAILED', 'the disk is full');
    const made = entries.map((entry, index) => rowOf(entry, rows.length + index + 1, wallMs));
    rows.push(...made);
    return made;
  },
  notes: (fromMs: number, toMs: number): readonly JournalRow[] =>
    rows.filter(({ cause, sourceTime }) => {
      const follows = followingCauses.some((one) => one === cause);
      return follows || (Date.parse(sourceTime) >= fromMs && Date.parse(sourceTime) < toMs);
    }),
};

const rowOf = (entry: NoteEntry, sequence: number, wallMs: number): JournalRow => {
  const { cause, hall, unit, alarm, actor, station, text, of, why, shift } = entry;
  const told = Object.entries({ of, why, shift }).filter(([, value]) => value !== null);
  return {
    ...{ sequence, kind: 'action', cause, hall, unit, alarm, actor, station, reason: text },
    ...{ entry: null, from: null, to: null, priority: null, value: null, limit: null, unit_of_measure: null },
    ...{ where: null, since: null, foldedUnder: null, previousHash: '', hash: '' },
    time: time(wallMs),
    sourceTime: time(entry.atMs),
    facts: told.length === 0 ? null : Object.fromEntries(told),
  };
};

const desk = new JournalNoteDesk({ journal, site: () => site, nowMs: () => nowMs, wallMs: () => startMs + 7000 });
const nowhere = { about: null, hall: null, unit: null, alarm: null };
const wrote = (text: string, where: object = {}) => valueOf(desk.write({ text, ...nowhere, ...where }, ines));
const textsOf = (wanted: object) =>
  valueOf(desk.notes({ fromMs: startMs - hour, toMs: startMs + hour, hall: null, unit: null, ...wanted })).notes.map(
    ({ text }) => text,
  );

function valueOf<Value>(done: Result<Value>): Value {
  if (!done.ok) throw new Error(`${done.fault.code}: ${done.fault.message}`);
  return done.value;
}
const codeOf = (done: Result<unknown>): string => (done.ok ? 'done' : done.fault.code);

beforeEach(() => {
  rows = [];
  nowMs = startMs;
  full = false;
});

describe('a note', () => {
  it('is about now where no time is given, and of the hall of its unit', () => {
    expect(wrote('weeps', { unit: 'n1', alarm: 'n1:AIR-1' })).toEqual({
      ...{ id: 'n1', text: 'weeps', by: 'Ines', station: '127.0.0.1', hall: 'north', unit: 'n1', alarm: 'n1:AIR-1' },
      ...{ writtenAt: '2031-05-06T12:00:07.000Z', about: '2031-05-06T12:00:00.000Z' },
      ...{ corrects: null, why: null, correctedBy: null, withdrawn: null },
    });
  });

  it.for([
    ['a minute ahead', startMs + 60_000, 'done'],
    ['later than that', startMs + 60_001, 'NOTE_TIME'],
    ['366 days ago', startMs - 366 * 24 * hour, 'done'],
    ['before that', startMs - 366 * 24 * hour - 1, 'NOTE_TIME'],
  ] as const)('about %s is taken or refused', ([, ms, code]) => {
    expect(codeOf(desk.write({ text: 'then', ...nowhere, about: time(ms) }, ines))).toBe(code);
  });

  it.for([
    [{ hall: 'west' }, 'HALL_UNKNOWN'],
    [{ unit: 'w1' }, 'UNIT_UNKNOWN'],
    [{ hall: 'south', unit: 'n1' }, 'UNIT_UNKNOWN'],
  ] as const)('of a place that is none is refused: %s', ([where, code]) => {
    expect(codeOf(desk.write({ text: 'there', ...nowhere, ...where }, ines))).toBe(code);
    expect(rows).toEqual([]);
  });

  it('is shown where it concerns: the whole with its parts, a part with its whole', () => {
    for (const [text, where] of [
      ['site', {}],
      ['north', { hall: 'north' }],
      ['n1', { unit: 'n1' }],
      ['south', { hall: 'south' }],
    ] as const)
      wrote(text, where);
    expect(textsOf({})).toEqual(['site', 'north', 'n1', 'south']);
    expect(textsOf({ hall: 'north' })).toEqual(['site', 'north', 'n1']);
    expect(textsOf({ hall: 'south' })).toEqual(['site', 'south']);
    expect(textsOf({ unit: 'n1' })).toEqual(['site', 'north', 'n1']);
    expect(textsOf({ unit: 's1' })).toEqual(['site', 'south']);
  });

  it('is listed by the time that it speaks of, half-open', () => {
    wrote('second');
    wrote('first', { about: time(startMs - hour) });
    wrote('before', { about: time(startMs - hour - 1) });
    expect(textsOf({})).toEqual(['first', 'second']);
    expect(textsOf({ toMs: startMs })).toEqual(['first']);
  });

  it('is corrected by another, about the same time and place, with both on record', () => {
    const { id } = wrote('server 4', { unit: 'n1', about: time(startMs - 600_000) });
    nowMs += 1000;
    const corrected = valueOf(desk.correct(id, { text: 'server 5', reason: 'slip' }, omar));
    expect(corrected).toMatchObject({ text: 'server 5', by: 'Omar', corrects: id, why: 'slip', unit: 'n1' });
    expect(corrected.about).toBe('2031-05-06T11:50:00.000Z');
    const { notes } = valueOf(desk.notes({ fromMs: startMs - hour, toMs: startMs, hall: null, unit: null }));
    expect(notes.map((note) => [note.text, note.correctedBy])).toEqual([
      ['server 4', corrected.id],
      ['server 5', null],
    ]);
    expect(codeOf(desk.correct(id, { text: 'server 6', reason: 'slip' }, omar))).toBe('NOTE_CORRECTED_ALREADY');
    expect(codeOf(desk.withdraw(id, { reason: 'slip' }, omar))).toBe('NOTE_CORRECTED_ALREADY');
  });

  it('is withdrawn with a reason, once, and stays on the list', () => {
    const { id } = wrote('another rack');
    nowMs += hour;
    const withdrawn = { by: 'Omar', at: '2031-05-06T13:00:00.000Z', reason: 'it was rack 7' };
    expect(valueOf(desk.withdraw(id, { reason: 'it was rack 7' }, omar))).toMatchObject({ id, withdrawn });
    const { notes } = valueOf(desk.notes({ fromMs: startMs, toMs: startMs + 1, hall: null, unit: null }));
    expect(notes).toMatchObject([{ text: 'another rack', withdrawn }]);
    expect(codeOf(desk.withdraw(id, { reason: 'again' }, ines))).toBe('NOTE_WITHDRAWN_ALREADY');
    expect(codeOf(desk.correct(id, { text: 'x', reason: 'again' }, ines))).toBe('NOTE_WITHDRAWN_ALREADY');
    expect(codeOf(desk.withdraw('n77', { reason: 'none' }, ines))).toBe('NOTE_UNKNOWN');
  });

  it('that the journal refuses is not written, and the one who wrote it is told', () => {
    full = true;
    expect(codeOf(desk.write({ text: 'lost', ...nowhere }, ines))).toBe('JOURNAL_UNAVAILABLE');
  });
});

describe('a handover', () => {
  const shift = { hall: null, from: time(startMs - 8 * hour), to: time(startMs), takerNamed: 'Omar', text: 'quiet' };

  it('stands with who hands over and who is to take over, until that one signs in and takes', () => {
    const { id, taken } = valueOf(desk.handOver(shift, ines));
    expect(taken).toBeNull();
    expect(codeOf(desk.takeOver(id, { text: '' }, ines))).toBe('HANDOVER_SAME_PERSON');
    nowMs += 120_000;
    const done = valueOf(desk.takeOver(id, { text: 'seen' }, omar));
    expect(done).toMatchObject({ by: 'Ines', takerNamed: 'Omar', taken: { by: 'Omar', station: '10.0.0.9' } });
    expect(codeOf(desk.takeOver(id, { text: '' }, { ...omar, name: 'Ida' }))).toBe('HANDOVER_TAKEN_ALREADY');
    expect(desk.handovers({ fromMs: startMs - 8 * hour, toMs: startMs, hall: null })).toEqual([done]);
  });

  it('is found by a moment of its shift, and by its hall alone', () => {
    valueOf(desk.handOver({ ...shift, hall: 'north' }, ines));
    const found = (fromMs: number, toMs: number, hall: string | null) => desk.handovers({ fromMs, toMs, hall }).length;
    expect(found(startMs - hour, startMs, 'north')).toBe(1);
    expect(found(startMs - hour, startMs, null)).toBe(0);
    expect(found(startMs, startMs + hour, 'north')).toBe(0);
  });

  it('is found by the last moments of its shift also where it was handed over before them', () => {
    valueOf(desk.handOver({ ...shift, to: time(startMs + 12 * hour) }, ines));
    const found = (fromMs: number) => desk.handovers({ fromMs, toMs: fromMs + hour, hall: null }).length;
    expect([found(startMs + 1), found(startMs + 12 * hour - 1), found(startMs + 12 * hour)]).toEqual([1, 1, 0]);
  });

  it.for([
    [{ to: shift.from }, 'HANDOVER_TIME'],
    [{ from: time(startMs + 1), to: time(startMs + hour) }, 'HANDOVER_TIME'],
    [{ to: time(startMs + 12 * hour + 1) }, 'HANDOVER_TIME'],
    [{ to: time(startMs + 12 * hour) }, 'done'],
    [{ from: time(startMs - 7 * 24 * hour - 1) }, 'HANDOVER_TIME'],
    [{ hall: 'west' }, 'HALL_UNKNOWN'],
    [{ takerNamed: 'Ines' }, 'HANDOVER_SAME_PERSON'],
  ] as const)('of %s is %s', ([change, code]) => {
    expect(codeOf(desk.handOver({ ...shift, ...change }, ines))).toBe(code);
  });
});
