import { describe, expect, it } from 'vitest';
import { missingOf, type KnownOfReport } from '../../../../../backend/src/runner/report/missing-of';
import { fromMs, minutes, toMs } from './report-sources';

const whole: KnownOfReport = {
  ...{ fromMs, toMs, untilMs: toMs, timeZone: 'Europe/Oslo', firstMs: fromMs - 1, leftOut: 0, more: false },
  ...{ moreNotes: false, mayReadAudit: true, unrecorded: 0, siteSinceMs: fromMs, energy: null, performance: null },
  waitingFromMs: Infinity,
};

describe('what a report does not tell', () => {
  it('is nothing where it tells all', () => {
    expect(missingOf(whole)).toEqual([]);
    expect(missingOf({ ...whole, waitingFromMs: toMs })).toEqual([]);
  });

  it.for([
    [{ untilMs: minutes(90) }, 'The period goes on until 2031-05-06 14:00: this is how it stood at 2031-05-06 07:30.'],
    [{ firstMs: null }, 'The journal has no row that is older than the end of this period.'],
    [
      { firstMs: minutes(60) },
      'The journal can be searched from 2031-05-06 07:00 on: of the time before nothing is told of alarms, changes and notes.',
    ],
    [{ unrecorded: 2 }, '2 changes of alarms wait for the journal, which can not be written; they are not here.'],
    [
      { siteSinceMs: minutes(1) },
      'The site file in force was read at 2031-05-06 06:01: units and points are as it has them, not as before.',
    ],
    [{ leftOut: 200 }, 'The figures of each of 200 units are left out; make the report of one hall for them.'],
    [
      { waitingFromMs: minutes(60) },
      'What was measured since 2031-05-06 07:00 waits on the disk until the history server takes it: no figure here has it.',
    ],
    [{ energy: 'Ask again.' }, 'Heat and energy: Ask again.'],
    [{ performance: 'None.' }, 'Alarm performance: None.'],
  ] as const)('is said: %o', ([change, sentence]) => {
    expect(missingOf({ ...whole, ...change })).toEqual([sentence]);
  });

  it('is said of rows, of notes and of what is shown to few', () => {
    expect(missingOf({ ...whole, more: true, moreNotes: true, mayReadAudit: false })).toHaveLength(3);
  });
});
