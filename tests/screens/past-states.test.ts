import type { Reading } from '@ebbline/shared/contract/reading';
import { describe, expect, it } from 'vitest';
import { aLoopFrame, aReading } from './fixtures/builders';
import { loopShown, siteWith } from './fixtures/loop-shown';

const show = loopShown();
const stale: Partial<Reading> = { age: 900, quality: 'bad', reasons: ['stale'] };
const site = siteWith({ shape: 'b', tanks: [{ id: 't1', name: 'Tank 1' }] });
const tank = (id: string, value: number, unit: string, more: Partial<Reading>): Reading =>
  aReading(`tank.t1.${id}`, value, unit, more);

describe('a state that comes no more', () => {
  it('of a tank is told as what it was', async () => {
    const points = [tank('level', 0.3, 'm', {}), tank('filling', 1, '1', stale)];
    const text = (await show(aLoopFrame({ points }), site)).get('[data-testid="vessel-tank.t1"]').text();
    expect(text).toContain('was filling under vacuum, which is old or in doubt');
  });

  it('of a tank that is known to be wrong is not told as so either', async () => {
    const wrong: Partial<Reading> = { quality: 'bad', reasons: ['stuck'] };
    const points = [tank('level', 0.3, 'm', {}), tank('filling', 0, '1', wrong)];
    const text = (await show(aLoopFrame({ points }), site)).get('[data-testid="vessel-tank.t1"]').text();
    expect(text).toContain('was discharging, which is old or in doubt');
  });

  it('gives a tank no arrow of rising or falling', async () => {
    const spoken = async (more: Partial<Reading>): Promise<string | undefined> => {
      const points = [aReading('separator.level', 0.4, 'm'), aReading('separatorRate', 0.001, 'm3/s', more)];
      return (await show(aLoopFrame({ points }))).get('[data-testid=vessel-separator] svg').attributes('aria-label');
    };
    expect(await spoken({})).toContain('rising');
    expect(await spoken(stale)).not.toContain('rising');
  });

  it('of a valve marks the command as old, apart from the position', async () => {
    const points = [aReading('valve.command', 0.6, '1', stale), aReading('valve.position', 0.34, '1')];
    const shown = await show(aLoopFrame({ points }));
    expect(shown.get('.valve-command').classes()).toContain('old');
    expect(shown.get('.valve-stem').classes()).not.toContain('old');
    expect(shown.get('.valve-line').attributes('aria-label')).toMatch(
      /command 60\.?0?\s%\s\(old\), position 34\.?0?\s%$/,
    );
  });
});
