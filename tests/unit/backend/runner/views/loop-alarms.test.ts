import { afterEach, describe, expect, it } from 'vitest';
import { PastPlant } from '../past/past-plant';

let past: PastPlant | null = null;
afterEach(() => past?.close());
const ran = (): PastPlant => (past = new PastPlant()).run(40);

describe('what stands at a loop', () => {
  it('is also what stands of the gateway that it shares with others', () => {
    const night = ran();
    night.plant.silent.add('m1').add('m2');
    night.run(20);
    expect(night.live().unit.alarms.map(({ id, unit }) => [id, unit])).toEqual([['g:COM-1', null]]);
  });

  it('has the priority of each margin’s own alarm, not that of whatever else stands', () => {
    const night = ran();
    expect(night.live().unit.line.gaps).toBeUndefined();
    night.plant.m1.pTank = 100;
    night.run(30);
    const { alarms, line } = night.live().unit;
    const margins = alarms.filter(({ entry }) => entry.startsWith('MARGIN-')).map(({ priority }) => priority);
    expect(margins.length).toBeGreaterThan(0);
    expect(line.gaps).toEqual({ left: null, right: Math.min(...margins) });
  });
});
