import { describe, expect, it } from 'vitest';
import { footerRules } from '../../../../frontend/src/components/page-footer';
import { readReportAddress, writeReportAddress } from '../../../../frontend/src/screens/report/report-address';
import { sayShare } from '../../../../frontend/src/screens/report/say-share';
import { nextShift, periodOf, shiftAt } from '../../../../frontend/src/screens/report/shifts';

const zone = 'Europe/Oslo';

describe('the shift that a moment is in', () => {
  // Oslo is UTC + 2 h in May.
  it.for([
    ['2031-05-06T03:59:59.999Z', '2031-05-05T20:00:00.000Z', '2031-05-06T04:00:00.000Z', 'night shift'],
    ['2031-05-06T04:00:00.000Z', '2031-05-06T04:00:00.000Z', '2031-05-06T12:00:00.000Z', 'early shift'],
    ['2031-05-06T19:59:00.000Z', '2031-05-06T12:00:00.000Z', '2031-05-06T20:00:00.000Z', 'late shift'],
    ['2031-05-06T23:30:00.000Z', '2031-05-06T20:00:00.000Z', '2031-05-07T04:00:00.000Z', 'night shift'],
  ] as const)('at %s is from %s to %s', ([at, from, to, name]) => {
    expect(shiftAt(at, zone)).toEqual({ from, to, name });
  });

  it('has nine hours in the night that clocks go back, and seven in the one that they go on', () => {
    // Oslo, 26 October 2031 at 3 h summer time and 30 March 2031 at 2 h.
    const hours = (at: string) => {
      const { from, to } = shiftAt(at, zone);
      return (Date.parse(to) - Date.parse(from)) / 3_600_000;
    };
    expect(hours('2031-10-26T00:30:00.000Z')).toBe(9);
    expect(hours('2031-03-30T00:30:00.000Z')).toBe(7);
  });

  it('holds every moment of the days around which clocks are changed, in the shift that a clock on the wall says', () => {
    for (const day of ['2031-03-29T12:00:00.000Z', '2031-10-25T12:00:00.000Z'])
      for (let quarter = 0; quarter < 200; quarter += 1) {
        const at = new Date(Date.parse(day) + quarter * 900_000).toISOString();
        const { from, to } = shiftAt(at, zone);
        expect([at, Date.parse(from) <= Date.parse(at), Date.parse(at) < Date.parse(to)]).toEqual([at, true, true]);
        expect([at, (Date.parse(to) - Date.parse(from)) / 3_600_000 <= 9]).toEqual([at, true]);
      }
  });

  it('is followed and preceded by the next, without a gap', () => {
    const shift = shiftAt('2031-05-06T05:00:00.000Z', zone);
    expect(nextShift(shift, 1, zone)).toMatchObject({ from: shift.to, name: 'late shift' });
    expect(nextShift(shift, -1, zone)).toMatchObject({ to: shift.from, name: 'night shift' });
  });

  it('gives a period its name only where it is that shift', () => {
    expect(periodOf('2031-05-06T04:00:00.000Z', '2031-05-06T12:00:00.000Z', zone).name).toBe('early shift');
    expect(periodOf('2031-05-06T04:00:00.000Z', '2031-05-06T11:00:00.000Z', zone).name).toBeNull();
  });
});

describe('the address of a report', () => {
  it.for([
    [{}, { hall: null, period: null }],
    [{ hall: 'north' }, { hall: 'north', period: null }],
    [
      { from: '2031-05-06T04:00:00.000Z', to: '2031-05-06T12:00:00.000Z' },
      { hall: null, period: { from: '2031-05-06T04:00:00.000Z', to: '2031-05-06T12:00:00.000Z' } },
    ],
  ] as const)('%o is read and written back', ([query, view]) => {
    expect(readReportAddress(query)).toEqual(view);
    expect(writeReportAddress(view)).toEqual(query);
  });

  it('with a period that is none is that of the shift that runs', () => {
    expect(readReportAddress({ from: '2031-05-06', to: 'noon' }).period).toBeNull();
    expect(readReportAddress({ from: '2031-05-06T12:00:00Z', to: '2031-05-06T04:00:00Z' }).period).toBeNull();
  });
});

describe('the foot of a printed page', () => {
  it('holds the words as words, whatever stands in them', () => {
    expect(footerRules({ left: 'Hall "A"\\\n}', right: 'made by Ines' })).toBe(
      '@page { @bottom-left { content: "Hall \\"A\\"\\\\ }"; } @bottom-right { content: "made by Ines" " · " counter(page) " / " counter(pages); } }',
    );
  });
});

describe('how much of a time has values', () => {
  it.for([
    [0, '0 %'],
    [0.0015, '< 1 %'],
    [0.42, '42 %'],
    [0.9999, '99.9 %'],
    [1, 'all'],
  ] as const)('at %s says %s, neither all nor nothing where it is not', ([share, said]) => {
    expect(sayShare(share).replaceAll('\u00a0', ' ')).toBe(said);
  });
});
