import type { EnergyPeriod, EnergyTotal } from '@ebbline/shared/contract/energy';
import { foldUnmeasured } from '@ebbline/frontend/src/text/fold-unmeasured';
import { describe, expect, it } from 'vitest';

const total = (energy: number | null): EnergyTotal => ({
  energy,
  expandedUncertainty: null,
  measuredSeconds: energy === null ? 0 : 3600,
  wantedSeconds: 3600,
  share: energy === null ? 0 : 1,
});
const at = (hour: number): string => new Date(Date.UTC(2031, 4, 6, hour)).toISOString();
const hour = (start: number, heat: number | null, chips: number | null = heat): EnergyPeriod => ({
  start: at(start),
  end: at(start + 1),
  heatRemoved: total(heat),
  facilityHeat: total(null),
  chipEnergy: total(chips),
  unitEnergy: total(null),
  heatPerUnitEnergy: null,
});
const shown = ['heatRemoved', 'chipEnergy'] as const;

describe('hours of a report without a measured value', () => {
  it('are one line from three of them on, in their place', () => {
    const hours = [hour(0, 5), hour(1, null), hour(2, null), hour(3, null), hour(4, 6)];
    expect(foldUnmeasured(hours, shown)).toEqual([hours[0], { from: at(1), to: at(4), count: 3 }, hours[4]]);
  });

  it('stand each by itself where they are two', () => {
    const hours = [hour(0, null), hour(1, null), hour(2, 5)];
    expect(foldUnmeasured(hours, shown)).toEqual(hours);
  });

  it('are folded at the end too, and where there is nothing else', () => {
    const hours = [hour(0, null), hour(1, null), hour(2, null), hour(3, null)];
    expect(foldUnmeasured(hours, shown)).toEqual([{ from: at(0), to: at(4), count: 4 }]);
    expect(foldUnmeasured([], shown)).toEqual([]);
  });

  it('do not take in one of which anything that is shown was measured', () => {
    const hours = [hour(0, null), hour(1, null, 3), hour(2, null)];
    expect(foldUnmeasured(hours, shown)).toEqual(hours);
  });
});
