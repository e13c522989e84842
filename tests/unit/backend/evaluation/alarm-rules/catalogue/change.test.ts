import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const shifts = ['uaRatioShift', 'inLeakShift'] as const;
const minutes = (count: number): number => 60 * count;

describe('CHANGE-1', () => {
  const bench = (): RuleBench => new RuleBench({ also: shifts, values: { uaRatioShift: 0.4, inLeakShift: -0.9 } });

  it('is quiet while no sum is at its limit', () => {
    expect(bench().run(minutes(90), undefined, 60).active('CHANGE-1')).toBe(false);
  });

  it('tells an engineer, and no operator, which figure has changed, whichever way', () => {
    const changed = bench().set('inLeakShift', -1.3).run(minutes(21), undefined, 60);
    expect(changed.alert('CHANGE-1')).toMatchObject({ value: -1.3, limit: 1, where: 'inLeakShift' });
    expect(changed.alarm('CHANGE-1')).toBeUndefined();
  });

  it('stands while the figure is not known', () => {
    const changed = bench().set('inLeakShift', -1.3).run(minutes(21), undefined, 60).bad('inLeakShift');
    expect(changed.run(minutes(90), undefined, 60).active('CHANGE-1')).toBe(true);
  });
});

describe('CHANGE-2', () => {
  it('tells of a pattern that stays broken, not of one mean', () => {
    const bench = new RuleBench({ also: ['patternResidual'], values: { patternResidual: 0.5 } });
    bench
      .set('patternResidual', 2)
      .run(minutes(10), undefined, 60)
      .set('patternResidual', 0.5)
      .run(minutes(10), undefined, 60);
    expect(bench.active('CHANGE-2')).toBe(false);
    expect(bench.set('patternResidual', 2).run(minutes(41), undefined, 60).alert('CHANGE-2')).toMatchObject({
      where: 'patternResidual',
    });
  });
});

describe('INS-4', () => {
  const points = ['lmtd', 'facility.return.temperature', 'facility.supply.temperature'] as const;
  const crossed = (flow: number): RuleBench =>
    new RuleBench({
      also: points,
      values: { 'loop.flow': flow, 'facility.return.temperature': 47, 'return.temperature': 44 },
    }).contradicted('lmtd');

  it('tells an engineer that the thermometers cross, and by how much', () => {
    expect(crossed(0.0058).run(minutes(11), undefined, 60).alert('INS-4')?.value).toBeCloseTo(-3, 9);
  });

  it('says nothing of water that stands, nor of ends that are known not to cross', () => {
    expect(crossed(0).run(minutes(30), undefined, 60).active('INS-4')).toBe(false);
    expect(crossed(0.0058).set('lmtd', 5).run(minutes(30), undefined, 60).active('INS-4')).toBe(false);
  });
});
