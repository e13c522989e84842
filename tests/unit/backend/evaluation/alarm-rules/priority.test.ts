import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { entryIds, unitEntryIds, unitEntryPlace } from '../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { severityOfLoss } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/ins-1';
import { unitEntries } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { foldsUnder } from '../../../../../backend/src/evaluation/alarm-rules/folding';
import { gradeOf, higher, priorityOf } from '../../../../../backend/src/evaluation/alarm-rules/priority';
import { priorityOfEntry } from '../../../../../backend/src/evaluation/alarm-rules/priority-of-entry';

describe('priority from severity and time to respond', () => {
  // The grid that this project chose in the way of IEC 62682 (severity against time to respond; its cells have no published source), cell by cell, with both edges of the middle column.
  it.each([
    ['severe', 179, 1],
    ['severe', 180, 2],
    ['severe', 600, 2],
    ['severe', 601, 3],
    ['major', 179, 2],
    ['major', 180, 3],
    ['major', 600, 3],
    ['major', 601, 3],
    ['minor', 179, 3],
    ['minor', 180, 3],
    ['minor', 600, 3],
    ['minor', 601, 'alert'],
  ] as const)('grades %s within %i s as %s', (severity, seconds, grade) => {
    expect(gradeOf(severity, seconds)).toBe(grade);
    expect(priorityOf(severity, seconds)).toBe(grade === 'alert' ? null : grade);
  });

  // Severity and time to respond of each entry as this project rationalised them (IEC 62682, rationalisation); no published source.
  it.each([
    ['MARGIN-1', 'severe', 8, 2],
    ['MARGIN-2', 'major', 3, 3],
    ['AIR-1', 'severe', 5, 2],
    ['BOIL-1', 'severe', 5, 2],
    ['FLOW-2', 'severe', 1, 1],
    ['TSUP-1', 'severe', 5, 2],
    ['DEW-1', 'major', 15, 3],
    ['WATER-1', 'severe', 1, 1],
    ['INS-1', 'major', 60, 3],
    ['COM-1', 'severe', 5, 2],
  ] as const)('makes %s (%s, %i min) priority %i', (id, severity, minutes, priority) => {
    const entry = catalogue[id];
    expect(entry).toMatchObject({ severity, timeToRespondS: minutes * 60 });
    expect(priorityOf(entry.severity, entry.timeToRespondS)).toBe(priority);
  });

  it('makes MARGIN-2 priority 1 with water or air', () => {
    const worse = catalogue['MARGIN-2'].worse;
    expect(worse === null ? null : priorityOf(worse.severity, worse.timeToRespondS)).toBe(1);
  });

  it('raises the loss of a point by what it feeds', () => {
    expect(severityOfLoss([3, 1])).toBe('major');
    expect(severityOfLoss([2, 3])).toBe('minor');
    expect(severityOfLoss([null])).toBe('minor');
    expect(severityOfLoss([])).toBe('minor');
  });
});

describe('priority of an entry that hides others', () => {
  it('is never milder than that of what folds under it', () => {
    for (const hidden of unitEntries) {
      for (const over of foldsUnder[hidden.id] ?? []) {
        const shown = unitEntries.find(({ id }) => id === over);
        expect(shown).toBeDefined();
        if (shown === undefined) continue;
        const least = priorityOfEntry(hidden, false) ?? Infinity;
        for (const worse of [false, true]) expect(priorityOfEntry(shown, worse)).toBeLessThanOrEqual(least);
      }
    }
  });

  // The grid alone gives MARGIN-2 priority 3 (above); MARGIN-1, which it hides, has 2.
  it('lifts MARGIN-2 to the priority of MARGIN-1, and leaves it at 1 with water or air', () => {
    const margin2 = unitEntries.find(({ id }) => id === 'MARGIN-2');
    expect(margin2 === undefined ? null : priorityOfEntry(margin2, false)).toBe(2);
    expect(margin2 === undefined ? null : priorityOfEntry(margin2, true)).toBe(1);
  });

  it('is that of the grid where nothing folds under it', () => {
    for (const entry of unitEntries.filter(({ id }) => id !== 'MARGIN-2'))
      expect(priorityOfEntry(entry, false)).toBe(priorityOf(entry.severity, entry.timeToRespondS));
  });

  it('takes the more urgent of two, and an alert as the least', () => {
    expect([higher(1, 3), higher(3, 2), higher(null, 3), higher(2, null), higher(null, null)]).toEqual([
      1,
      2,
      3,
      2,
      null,
    ]);
  });
});

describe('the table of entries', () => {
  it('lists each once, under its own id and in the order of the ids', () => {
    for (const id of entryIds) expect(catalogue[id].id).toBe(id);
    expect(unitEntries.map(({ id }) => id)).toEqual([...unitEntryIds]);
    unitEntryIds.forEach((id, i) => expect(unitEntryPlace[id]).toBe(i));
  });

  it('never switches off MARGIN, WATER, DEW, AIR or BOIL by mode, and what needs flow where stopped or filling', () => {
    const never = unitEntries.filter(({ offInModes }) => offInModes.length === 0).map(({ id }) => id);
    expect(never).toEqual(
      expect.arrayContaining(['AIR-1', 'BOIL-1', 'DEW-1', 'DEW-2', 'MARGIN-1', 'MARGIN-2', 'WATER-1']),
    );
    for (const entry of unitEntries) {
      if (!/^(FLOW|TSUP|HX|FIL|RTH|FAC|PUMP-[13])/.test(entry.id)) continue;
      expect(entry.offInModes).toEqual(expect.arrayContaining(['off', 'filling', 'standby']));
    }
    for (const { offInModes } of unitEntries) expect(offInModes).not.toContain('running');
  });
});
