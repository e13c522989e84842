import { modes } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { compileUnitSlots } from '../../../../../backend/src/evaluation/alarm-rules/unit-slots';
import { modeOfUnit } from '../../../../../backend/src/evaluation/pipeline/mode-of-unit';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { createSlotState } from '../../../../../backend/src/evaluation/slots/slot-state';
import { plantSite } from './plant';

const site = plantSite({ modePoint: true, points: { 'pump.standby.running': { path: 'standbyPump' } } });

function mode(values: Readonly<Record<string, number>>, bad: readonly string[] = []) {
  const state = createSlotState(site.slots.count);
  const unit = site.units[0];
  const holder = site.holders[unit?.holder ?? -1];
  if (unit === undefined || holder === undefined) throw new Error('the site has a unit');
  for (const [point, value] of Object.entries(values)) {
    const slot = holder.slotOf.get(point) ?? -1;
    state.value[slot] = value;
    state.reasons[slot] = bad.includes(point) ? reasonBit.stale : 0;
  }
  return modeOfUnit(state, compileUnitSlots(holder, unit));
}

describe('mode of a loop', () => {
  it('is what the mode point says, whatever the feedback', () => {
    modes.forEach((name, i) => {
      expect(mode({ mode: i, 'pump.running': 1 })).toEqual({ mode: name, known: true, told: true });
    });
  });

  it.each([
    ['running', { 'pump.running': 1, 'vacuum.running': 1 }],
    ['running', { 'pump.running': 1, 'vacuum.running': 0 }],
    ['running', { 'pump.running': 1 }],
    ['running', { 'pump.running': 0, 'pump.standby.running': 1, 'vacuum.running': 1 }],
    ['running', { 'pump.standby.running': 1 }],
    ['standby', { 'pump.running': 0, 'pump.standby.running': 0, 'vacuum.running': 1 }],
    ['standby', { 'pump.running': 0, 'vacuum.running': 1 }],
    ['off', { 'pump.running': 0, 'vacuum.running': 0 }],
    ['off', { 'pump.running': 0 }],
  ])('is %s by feedback %o where no mode point speaks', (expected, values) => {
    expect(mode({ mode: 0, ...values }, ['mode'])).toEqual({ mode: expected, known: true, told: false });
  });

  it('is not known without either, and counts as running', () => {
    expect(mode({})).toEqual({ mode: 'running', known: false, told: false });
    expect(mode({ 'vacuum.running': 0 })).toEqual({ mode: 'running', known: false, told: false });
  });
});
