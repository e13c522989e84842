import { describe, expect, it } from 'vitest';
import { captureText } from '../../../../frontend/src/screens/hall/capture-text';
import { partialSum } from '../../../../frontend/src/screens/hall/partial-sum';
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
          { unit: 'e1', where: 'Rack 4', priority: 2 },
          { unit: 'e1', where: '4', priority: 1 },
        ],
        branch,
      ),
    ).toBe(1);
    expect(
      alarmOfBranch(
        [
          { unit: 'e1', where: '14', priority: 1 },
          { unit: null, where: '4', priority: 1 },
          { unit: 'e1', where: null, priority: 1 },
        ],
        branch,
      ),
    ).toBeNull();
  });
});

describe('capture on the Hall screen', () => {
  const loop = (heatRemoved: number | null, chipPower: number | null) => ({
    heatRemoved: aFigure(heatRemoved),
    chipPower: aFigure(chipPower),
  });

  it('is heat removed over chip power', () => {
    expect(captureText([loop(90, 100), loop(45, 50)])).toBe('90.0\u00a0%');
  });

  it('is not guessed where either is missing', () => {
    expect(captureText([loop(null, 100)])).toBeNull();
    expect(captureText([loop(90, 0)])).toBeNull();
    expect(captureText([])).toBeNull();
    expect(captureText([loop(200, 1)])).toMatch(/contradict/);
    expect(captureText([loop(-20, 100)])).toMatch(/contradict/);
    expect(captureText([loop(120, 100)])).toBe('120.0\u00a0%');
  });

  it('counts only loops that have both, and says how many they are', () => {
    expect(captureText([loop(90, 100), loop(80, null), loop(null, 70)])).toBe('90.0\u00a0% in 1 of 3 units');
    // The heat beside it is of both: who divides one by the other would get another share.
    expect(captureText([loop(90, 100), loop(80, null)])).toBe('90.0\u00a0% in 1 of 2 units');
  });
});

describe('a sum of the Hall screen', () => {
  const sum = aFigure(170, { quality: 'uncertain', reasons: ['inputBad'] });

  it('says how many units it counts, and why not the others, in the place of a bad input', () => {
    const others = [aFigure(null, { reasons: ['warming'] }), aFigure(null, { reasons: ['warming'] })];
    const { figure, note } = partialSum(sum, [aFigure(90), aFigure(80), ...others]);
    expect(figure).toMatchObject({ value: 170, quality: 'good', reasons: [] });
    expect(note).toBe('2 of 4 units; the others: not watched long enough yet');
  });

  it('says of a unit without the sensors that it is not known there, which no waiting changes', () => {
    const absent = aFigure(null, { age: null, reasons: ['notApplicable'] });
    expect(partialSum(sum, [aFigure(90), absent]).note).toBe('1 of 2 units; the other: not known there');
    const warming = aFigure(null, { reasons: ['warming'] });
    expect(partialSum(sum, [aFigure(90), absent, warming]).note).toBe(
      '1 of 3 units; the others: not known there; not watched long enough yet',
    );
  });

  it('says that it counts none, beside the reasons of the units that it carries', () => {
    const none = aFigure(null, { quality: 'bad', reasons: ['warming'] });
    expect(partialSum(none, [none, none])).toEqual({ figure: none, note: '0 of 2 units' });
  });

  it('keeps every other doubt, and says nothing of units where all are counted', () => {
    const doubtful = { ...sum, reasons: ['inputBad', 'inputUncertain'] as const };
    expect(partialSum(doubtful, [aFigure(90), aFigure(null)]).figure).toMatchObject({
      quality: 'uncertain',
      reasons: ['inputUncertain'],
    });
    expect(partialSum(sum, [aFigure(90), aFigure(80)])).toEqual({ figure: sum, note: null });
  });
});
