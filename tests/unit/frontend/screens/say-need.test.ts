import { describe, expect, it } from 'vitest';
import { sayNeed } from '../../../../frontend/src/screens/hall/say-need';
import { aFigure, aLine, anAlarm, aWindow } from '../../../screens/fixtures/builders';

const calm = aLine('e1');
const needing = aLine('e2', { worst: { ...anAlarm('e2:X'), detail: null } });
const silent = aLine('e3', {
  pressureWindow: aWindow({ vacuumMargin: aFigure(14_000, { quality: 'bad', reasons: ['stale'] }) }),
});

describe('what the hall says of its need', () => {
  it('is that nobody is needed where all is well and known', () => {
    expect(sayNeed([calm, calm])).toBe('none needs a person');
  });

  it('counts the units that need a person', () => {
    expect(sayNeed([calm, needing])).toBe('1 needs a person');
    expect(sayNeed([needing, needing, calm])).toBe('2 need a person');
  });

  it('never calls a unit well of which nothing fresh is known', () => {
    expect(sayNeed([calm, silent])).toBe('1 without a fresh margin');
    expect(sayNeed([needing, silent, silent])).toBe('1 needs a person, 2 without a fresh margin');
  });
});
