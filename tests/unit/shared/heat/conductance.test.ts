import { foulingResistance } from '@ebbline/shared/heat/conductance';
import { describe, expect, it } from 'vitest';

describe('foulingResistance', () => {
  // Resistances in series add (from memory: any text on heat transfer): 1/UA = 1/UA_clean + R, so 1/16 − 1/20 = 1/80 K/kW.
  it('is what the dirt alone adds to the resistance of the clean exchanger', () => {
    expect(foulingResistance(16_000, 20_000)).toBeCloseTo(1 / 80_000, 12);
    expect(foulingResistance(20_000, 20_000)).toBe(0);
  });
});
