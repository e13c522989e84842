import { describe, expect, it } from 'vitest';
import { createSlotState } from '../../../../backend/src/evaluation/slots/slot-state';
import { HolderWatch } from '../../../../backend/src/runner/holder-watch';
import { slotOf, smallSite } from '../../../helpers/small-site';

function bench() {
  const site = smallSite();
  const state = createSlotState(site.slots.count);
  const index = site.holders.findIndex(({ id }) => id === 'm1');
  return {
    state,
    watch: new HolderWatch(site, state, [index]),
    own: slotOf(site, 'm1', 'loop.flow'),
    other: slotOf(site, 'm2', 'loop.flow'),
  };
}

describe('a watch over some holders', () => {
  it('sees the first look, and then nothing while nothing changes, empty values included', () => {
    const { watch } = bench();
    expect([watch.changed(), watch.changed(), watch.changed()]).toEqual([true, false, false]);
  });

  it('sees a value, a sample with the same value, and a reason; once each', () => {
    const { watch, state, own } = bench();
    watch.changed();
    for (const change of [
      () => (state.value[own] = 1),
      () => (state.acceptedMs[own] = 5),
      () => (state.reasons[own] = 2),
    ]) {
      change();
      expect([watch.changed(), watch.changed()]).toEqual([true, false]);
    }
  });

  it('does not see other holders', () => {
    const { watch, state, other } = bench();
    watch.changed();
    state.value[other] = 1;
    expect(watch.changed()).toBe(false);
  });
});
