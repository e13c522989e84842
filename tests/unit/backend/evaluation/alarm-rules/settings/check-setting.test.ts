import type { ProposedSettings } from '@ebbline/shared/contract/alarm-settings';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryIds, type EntryId } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { rationaleTable } from '../../../../../../backend/src/evaluation/alarm-rules/rationale/rationale-table';
import { checkSetting } from '../../../../../../backend/src/evaluation/alarm-rules/settings/check-setting';
import { toSettings } from '../../../../../../backend/src/evaluation/alarm-rules/settings/to-settings';

const check = (id: EntryId, set: ProposedSettings, unitOfMeasure?: string | null) =>
  checkSetting(id, toSettings(id, undefined), set, unitOfMeasure);
const codeOf = (id: EntryId, set: ProposedSettings, unitOfMeasure?: string | null): string | null => {
  const checked = check(id, set, unitOfMeasure);
  return checked.ok ? null : checked.fault.code;
};
const changeable = entryIds.filter((id) => rationaleTable[id].setting.changeable);

describe('a setting that is proposed', () => {
  it('takes the place of what it names only', () => {
    const checked = check('MARGIN-1', { limit: 7000 }, 'Pa');
    expect(checked).toEqual({ ok: true, value: { ...toSettings('MARGIN-1', undefined), limit: 7000 } });
  });

  it.for([
    ['COM-1', { onDelaySeconds: 1 }, 'SETTING_FIXED'],
    ['SYS-1', { enabled: false }, 'SETTING_FIXED'],
    ['WATER-1', { limit: 2 }, 'SETTING_ABSENT'],
    ['WATER-1', { deadband: 1 }, 'SETTING_ABSENT'],
    ['MARGIN-1', { low: 1 }, 'SETTING_ABSENT'],
    ['MARGIN-1', { limit: 101_326 }, 'SETTING_RANGE'],
    ['MARGIN-1', { limit: Number.NaN }, 'SETTING_RANGE'],
    ['AIR-1', { limit: -0.001 }, 'SETTING_RANGE'],
    ['AIR-1', { limit: 0 }, 'SETTING_RANGE'],
    ['AIR-2', { limit: 0.001, deadband: 0.002 }, 'SETTING_DEADBAND'],
    ['AIR-1', { deadband: 0.0001 }, 'SETTING_ABSENT'],
    ['XFER-1', { deadband: 0.1 }, 'SETTING_ABSENT'],
    ['TANK-4', { limit: 0.004, deadband: 0.001 }, 'SETTING_ABSENT'],
    ['INS-4', { deadband: 0.1 }, 'SETTING_ABSENT'],
    ['AIR-1', { limit: 0.001 }, null],
    ['CHEM-2', { limit: 14.5 }, 'SETTING_RANGE'],
    ['CHEM-1', { low: 9, limit: 8 }, 'SETTING_BAND'],
    ['CHEM-1', { low: 7, limit: 8, deadband: 0.6 }, 'SETTING_DEADBAND'],
    ['CHEM-1', { low: 7, limit: 8, deadband: 0.1 }, null],
    ['MARGIN-1', {}, 'SETTING_UNCHANGED'],
    ['MARGIN-1', { limit: 5000 }, 'SETTING_UNCHANGED'],
    ['MARGIN-1', { limit: 5000.000_000_1 }, 'SETTING_UNCHANGED'],
    ['WATER-1', { enabled: false }, null],
  ] as const satisfies readonly (readonly [string, ProposedSettings, string | null])[])(
    '%s %j is answered with %s',
    ([id, set, code]) => {
      expect(codeOf(id as EntryId, set)).toBe(code);
    },
  );

  it('is refused in any unit of measure but that of the entry', () => {
    expect(codeOf('MARGIN-1', { limit: 7 }, 'kPa')).toBe('SETTING_UNIT_OF_MEASURE');
    expect(codeOf('WATER-1', { onDelaySeconds: 9 }, 'Pa')).toBe('SETTING_UNIT_OF_MEASURE');
    expect(codeOf('WATER-1', { onDelaySeconds: 9 }, null)).toBeNull();
  });

  it.for(changeable)('%s is set to its own settings: unchanged, never nonsense', (id) => {
    const { enabled, onDelaySeconds, offDelaySeconds } = toSettings(id, undefined);
    expect(codeOf(id, { enabled, onDelaySeconds, offDelaySeconds })).toBe('SETTING_UNCHANGED');
    expect(codeOf(id, { enabled: !enabled })).toBeNull();
  });

  it('keeps limit and deadband on the alarm’s side of what a sound plant reads', () => {
    const sided = changeable.filter((id) => rationaleTable[id].setting.sound !== null);
    expect(sided.length).toBeGreaterThan(5);
    const number = fc.double({ min: 0, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...sided), number, number, (id, limit, deadband) => {
        const checked = check(id, { limit, deadband });
        if (!checked.ok) return;
        const { side, sound } = rationaleTable[id].setting;
        const reached = side === 'above' ? limit - deadband - (sound ?? 0) : (sound ?? 0) - limit - deadband;
        expect(reached).toBeGreaterThanOrEqual(-1e-12);
        expect(limit).not.toBe(sound);
      }),
    );
  });
});
