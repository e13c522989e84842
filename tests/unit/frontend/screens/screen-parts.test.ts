import { describe, expect, it } from 'vitest';
import { captureText } from '../../../../frontend/src/screens/hall/capture-text';
import { alarmOfBranch } from '../../../../frontend/src/screens/loop/alarm-of-branch';
import { groupPoints } from '../../../../frontend/src/screens/loop/group-points';
import { aFigure, aReading } from '../../../screens/fixtures/builders';

describe('the parts of the Loop screen', () => {
  it('group points by where they belong and leave empty groups out', () => {
    const groups = groupPoints([
      aReading('supply.temperature', 35, 'Cel'),
      aReading('branch.1.heatRemoved', 1, 'W', { kind: 'derived' }),
      aReading('vacuumMargin', 1, 'Pa', { kind: 'derived' }),
    ]);
    expect(groups.map(({ id, points }) => [id, points.map((point) => point.id)])).toEqual([
      ['derived', ['vacuumMargin']],
      ['measured', ['supply.temperature']],
      ['branches', ['branch.1.heatRemoved']],
    ]);
  });

  it('colour a branch only where an alarm names it, by the worst that does', () => {
    const branch = { id: '4', name: 'Rack 4' };
    expect(
      alarmOfBranch(
        [
          { where: 'Rack 4', priority: 2 },
          { where: '4', priority: 1 },
        ],
        branch,
      ),
    ).toBe(1);
    expect(
      alarmOfBranch(
        [
          { where: '14', priority: 1 },
          { where: null, priority: 1 },
        ],
        branch,
      ),
    ).toBeNull();
  });
});

describe('capture on the Hall screen', () => {
  it('is heat removed over chip power', () => {
    expect(captureText(aFigure(90), aFigure(100))).toBe('90.0\u00a0%');
  });

  it('is not guessed where either is missing', () => {
    expect(captureText(aFigure(null), aFigure(100))).toBeNull();
    expect(captureText(aFigure(90), aFigure(0))).toBeNull();
  });
});
