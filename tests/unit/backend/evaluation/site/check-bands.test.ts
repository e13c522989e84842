import { describe, expect, it } from 'vitest';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../../../../backend/src/evaluation/site/compile-site';
import { keyPath } from '../../../../../backend/src/evaluation/site/site-fault';
import { changed, type Change } from './change-document';

const point = (id: string, unit: string): Change => [
  ['templates', 'typeM', 'points', id],
  { topic: `plant/{unit}/${id}`, unit },
];
const conductivity = point('water.conductivity', 'µS/cm');
const inhibitor = point('water.inhibitor', 'mg/L');
const limits = (entry: string, value: object): Change => [['limits'], { [entry]: value }];

function warningsOf(...changes: readonly Change[]): readonly string[] {
  const compiled = compileSite(changed(...changes), derivedPointIds);
  if (!compiled.ok)
    throw new Error(compiled.fault.map(({ path, message }) => `${keyPath(path)}: ${message}`).join('\n'));
  return compiled.value.warnings.map(({ path, message }) => `${keyPath(path)}: ${message}`);
}

describe('a quantity of the water without a band', () => {
  it('is told once, with the units that measure it, as nothing is raised by it', () => {
    const [warning, ...more] = warningsOf(conductivity);
    expect(warning).toMatch(/^limits\.CHEM-1: is not stated.*water\.conductivity of m1.*state low and limit/);
    expect(more).toEqual([]);
    expect(warningsOf(inhibitor)).toEqual([expect.stringMatching(/^limits\.CHEM-4: .*water\.inhibitor.*state low,/)]);
  });

  it('is not told where the site states one, or switches the entry off, or does not measure it', () => {
    expect(warningsOf(conductivity, limits('CHEM-1', { limit: '100 µS/cm' }))).toEqual([]);
    expect(warningsOf(conductivity, limits('CHEM-1', { enabled: false }))).toEqual([]);
    expect(warningsOf(inhibitor, limits('CHEM-4', { low: '700 mg/L' }))).toEqual([]);
    expect(warningsOf()).toEqual([]);
  });
});
