import { describe, expect, it } from 'vitest';
import { transitionFacts } from '../../../../../backend/src/evaluation/pipeline/transition-facts';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { createSlotState } from '../../../../../backend/src/evaluation/slots/slot-state';
import { slotOf } from '../../../../helpers/small-site';
import { plantSite } from './plant';

const site = plantSite({ units: ['m1', 'm2'] });

/** All points good but those that are named, each with its reason. */
function plant(not: Readonly<Record<string, keyof typeof reasonBit>> = {}) {
  const state = createSlotState(site.slots.count);
  state.reasons.fill(0);
  for (const [point, reason] of Object.entries(not)) {
    const [holder = '', id = ''] = point.split('/');
    state.reasons[slotOf(site, holder, id)] = reasonBit[reason];
  }
  return state;
}
const ofUnit = (entry: string, part = '') => ({ alarm: `m1:${entry}${part}`, entry, unit: 'm1', hall: 'h' });

describe('what else is on record of a change of an alarm', () => {
  it('is its class, its hall as operating position, and the quality of what feeds it', () => {
    expect(transitionFacts(site, plant(), ofUnit('TSUP-1'))).toEqual({ quality: 'good', class: 'heat', position: 'h' });
  });

  it.each([
    [{ 'm1/supply.temperature': 'jump' }, 'uncertain'],
    [{ 'm1/supply.temperature': 'stale' }, 'bad'],
    [{ 'm1/supply.temperature': 'stuck', 'm2/supply.temperature': 'stale' }, 'uncertain'],
    [{ 'm1/water.found': 'stale' }, 'good'],
  ] as const)('is with %j of quality %s', (not, quality) => {
    expect(transitionFacts(site, plant(not), ofUnit('TSUP-1')).quality).toBe(quality);
  });

  it('is of a branch the quality of that branch, not of the others', () => {
    const state = plant({ 'm1/branch.r2.flow': 'stale' });
    expect(transitionFacts(site, state, ofUnit('FLOW-3', ':r1')).quality).toBe('good');
    expect(transitionFacts(site, state, ofUnit('FLOW-3', ':r2')).quality).toBe('bad');
  });

  it('is of a point the quality of that point', () => {
    const state = plant({ 'm1/separator.level': 'stale' });
    expect(transitionFacts(site, state, ofUnit('INS-1', ':separator.level')).quality).toBe('bad');
    expect(transitionFacts(site, state, ofUnit('INS-1', ':supplyTank.level')).quality).toBe('good');
  });

  it('is of the program without quality, at the position of the site', () => {
    const facts = transitionFacts(site, plant(), { alarm: 'program:SYS-2', entry: 'SYS-2', unit: null, hall: null });
    expect(facts).toEqual({ class: expect.any(String) as string, position: 's' });
  });

  it('is of an entry that this program no longer knows the position alone', () => {
    expect(transitionFacts(site, plant(), ofUnit('OLD-9'))).toEqual({ position: 'h' });
  });
});
