import { describe, expect, it } from 'vitest';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../../../../backend/src/evaluation/site/compile-site';
import { keyPath } from '../../../../../backend/src/evaluation/site/site-fault';
import { compiledOrThrow, smallSite } from '../../../../helpers/small-site';
import { changed } from './change-document';

describe('loops', () => {
  it('are one for each unit where the file names none', () => {
    const { loops, units } = smallSite();
    expect(loops).toEqual([
      { id: 'm1', name: 'Unit one', units: [0], unitsNeeded: 1 },
      { id: 'm2', name: 'Unit two', units: [1], unitsNeeded: 1 },
    ]);
    expect(units.map(({ loop }) => loop)).toEqual([0, 1]);
  });

  it('hold the units that the file puts on them; one left alone has its own', () => {
    const third = [['units', 'm0'], { name: 'Unit zero', hall: 'north', template: 'typeM' }] as const;
    const site = compiledOrThrow(
      changed([['loops', 'row'], { name: 'Row', units: ['m2', 'm1'], unitsNeeded: 1 }], third),
    );
    expect(site.loops).toEqual([
      { id: 'row', name: 'Row', units: [1, 0], unitsNeeded: 1 },
      { id: 'm0', name: 'Unit zero', units: [2], unitsNeeded: 1 },
    ]);
    expect(site.units.map(({ loop }) => loop)).toEqual([0, 0, 1]);
  });

  it('need all their units where the file does not say', () => {
    const { loops } = compiledOrThrow(changed([['loops', 'row'], { units: ['m2', 'm1'] }]));
    expect(loops[0]).toMatchObject({ name: 'row', unitsNeeded: 2 });
  });

  it('lie in one hall', () => {
    const document = changed(
      [['halls', 'south'], { name: 'South hall' }],
      [['units', 'm2', 'hall'], 'south'],
      [['loops', 'row'], { units: ['m1', 'm2'] }],
    );
    const compiled = compileSite(document, derivedPointIds);
    expect(!compiled.ok && compiled.fault.map(({ path, message }) => [keyPath(path), message])).toEqual([
      ['loops.row.units', expect.stringMatching(/several halls \(north, south\)/)],
    ]);
  });
});
