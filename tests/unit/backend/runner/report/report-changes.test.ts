import { describe, expect, it } from 'vitest';
import { changesOf, testsOf } from '../../../../../backend/src/runner/report/report-changes';
import { row } from './report-sources';

const zone = 'Europe/Oslo';
const settings = { limit: 5000, low: null, deadband: 500, onDelaySeconds: 10, offDelaySeconds: 10, enabled: true };
const setting = (scope: object, now: object) =>
  ({ setting: { scope, old: settings, new: { ...settings, ...now }, link: '' } }) as never;

describe('what changed in a shift', () => {
  it.for([
    [
      { cause: 'settingChanged', entry: 'MARGIN-1', reason: 'tighter at night' },
      setting({ kind: 'unit', id: 'n1' }, { limit: 4000, onDelaySeconds: 5 }),
      'MARGIN-1 for unit n1: limit 5000 → 4000 Pa, on-delay 10 → 5 s. tighter at night',
    ],
    [
      { cause: 'settingChanged', entry: 'MARGIN-1', reason: null },
      setting({ kind: 'site' }, { enabled: false }),
      'MARGIN-1 for the site: judged yes → no',
    ],
    [
      { cause: 'permitOpened', where: 'r5', reason: 'permit opened until 2031-05-06T07:08:00.000Z: hose 4' },
      null,
      'Permit opened for r5 until 2031-05-06 09:08: hose 4',
    ],
    [
      { cause: 'permitClosed', actor: null },
      null,
      'Permit closed: the whole loop, by the program: all was back at its baseline',
    ],
    [{ cause: 'permitClosed', actor: 'Ines', where: 'r5' }, null, 'Permit closed: r5'],
    [
      { cause: 'shelve', entry: 'FIL-2', reason: 'filter is changed' },
      { minutes: 45, setAsideReason: 'filter is changed' },
      'FIL-2 Filter is nearly blocked shelved for 45 min: filter is changed',
    ],
    [
      { cause: 'takeOut', entry: 'FIL-2' },
      { setAsideReason: 'meter is out' },
      'FIL-2 Filter is nearly blocked taken out of service: meter is out',
    ],
    [
      { cause: 'handEntered', reason: 'Copper by hand, sample of 2031-01-06T07:00:00.000Z' },
      null,
      'Copper by hand, sample of 2031-01-06 08:00',
    ],
    [
      {
        cause: 'settingRefused',
        reason: 'the change of MARGIN-1 for unit n1 at 2031-05-06T07:08:00.000Z is not in force',
      },
      null,
      'The change of MARGIN-1 for unit n1 at 2031-05-06 09:08 is not in force',
    ],
    [
      { cause: 'settingFits', reason: 'the change of MARGIN-1 for unit n1 fits the site file again.' },
      null,
      'The change of MARGIN-1 for unit n1 fits the site file again.',
    ],
    [{ cause: 'programStarted', reason: 'Ebbline 0.9.0 started' }, null, 'Ebbline 0.9.0 started'],
    [{ cause: 'programEnded', reason: 'Ebbline 0.9.0 ended in order' }, null, 'Ebbline 0.9.0 ended in order'],
    [{ cause: 'personChanged', reason: 'Omar is an engineer now' }, null, 'Omar is an engineer now'],
    [{ cause: 'alertCame', entry: 'SET-1' }, null, 'Set point changed, or in hand, bypass or local'],
  ] as const)('is told of %o', ([change, facts, what]) => {
    expect(changesOf([row({ ...change, facts })], zone).map((one) => one.what)).toEqual([what]);
  });

  it('is no acknowledgement, no other alert, no note, and no change of an alarm by itself', () => {
    const causes = [
      'acknowledge',
      'conditionTrue',
      'alertWent',
      'noteWritten',
      'suppress',
      'signedIn',
      'tightnessEnded',
    ];
    expect(
      changesOf(
        causes.map((cause) => row({ cause, entry: 'HX-1' })),
        zone,
      ),
    ).toEqual([]);
  });

  it('has the value of what was typed by hand, and of nothing else', () => {
    const typed = { value: 0.05, unit_of_measure: 'kg/m3', where: 'water.copper.hand' };
    const [hand, permit] = changesOf(
      [row({ cause: 'handEntered', ...typed }), row({ cause: 'permitClosed', ...typed })],
      zone,
    );
    expect(hand).toMatchObject({ kind: 'hand', point: 'water.copper.hand', value: 0.05, unit_of_measure: 'kg/m3' });
    expect(permit).toMatchObject({ kind: 'permit', point: null, value: null, unit_of_measure: null });
  });
});

describe('guided tests of a shift', () => {
  it('are those that began or ended', () => {
    const rows = [
      row({
        sequence: 4,
        cause: 'tightnessStarted',
        unit: 'n1',
        actor: 'Ines',
        reason: 'tightness test started for 30 min',
      }),
      row({ sequence: 5, cause: 'tightnessEnded', unit: 'n1', reason: 'tightness test completed, passes' }),
      row({ sequence: 6, cause: 'permitOpened' }),
    ];
    expect(testsOf(rows, zone)).toMatchObject([
      { sequence: 4, unit: 'n1', what: 'Tightness test started for 30 min', by: 'Ines' },
      { sequence: 5, unit: 'n1', what: 'Tightness test completed, passes', by: null },
    ]);
  });
});
