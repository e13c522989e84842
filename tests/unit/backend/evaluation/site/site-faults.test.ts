import { describe, expect, it } from 'vitest';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../../../../backend/src/evaluation/site/compile-site';
import { keyPath } from '../../../../../backend/src/evaluation/site/site-fault';
import { changed } from './change-document';
import { figureFaults } from './figure-faults.table';
import { fluidFaults } from './fluid-faults.table';
import { pairFaults } from './pair-faults.table';
import { partFaults } from './part-faults.table';
import { plantFaults } from './plant-faults.table';
import { pointFaults } from './point-faults.table';

const entries = new Map([
  ['MARGIN-1', 'pressureDifference'],
  ['DEW-1', 'temperatureDifference'],
  ['COM-1', null],
] as const);

function faultsOf(document: unknown): string[] {
  const compiled = compileSite(document, derivedPointIds, entries);
  return compiled.ok ? [] : compiled.fault.map(({ path, message }) => `${keyPath(path)}: ${message}`);
}

describe('compileSite: what is wrong with a site file', () => {
  it.each([...pointFaults, ...plantFaults, ...partFaults, ...pairFaults, ...figureFaults, ...fluidFaults])(
    'tells of %s',
    (_title, keys, value, key, message) => {
      const faults = faultsOf(changed([keys, value]));
      const about = faults.filter((fault) => fault.startsWith(`${key}: `));
      expect(about.join('\n'), `all faults:\n${faults.join('\n')}`).toMatch(message);
    },
  );

  it('tells all faults at once: shape, references, units of measure and physics', () => {
    const faults = faultsOf(
      changed(
        [['site', 'altitude'], '1200 m'],
        [['units', 'm1', 'colour'], 'blue'],
        [['units', 'm1', 'gateway'], 'west'],
        [['units', 'm2', 'points', 'supplyTank.pressure', 'unit'], 'K'],
        [['templates', 'typeM', 'ratedHeat'], '208'],
      ),
    );
    expect(faults.map((fault) => fault.split(': ')[0])).toEqual([
      'templates.typeM.ratedHeat',
      'units.m1.colour',
      'units.m2.points.supplyTank.pressure.unit',
      'units.m1.gateway',
      'templates.typeM.pressureWindow',
    ]);
  });

  it('adds no fault that is only there because a misshapen part was left out', () => {
    expect(faultsOf(changed([['templates', 'typeM', 'ratedFlow'], 'much']))).toHaveLength(1);
    expect(faultsOf(changed([['templates', 'typeM', 'elevations', 'returnInlet'], '1.2']))).toHaveLength(1);
  });

  it.each([null, 7, 'text', [], {}, { site: 7, halls: null, units: [] }])('refuses %j without throwing', (document) => {
    expect(faultsOf(document).length).toBeGreaterThan(0);
  });

  it('turns a missing pressure window into a warning where the site says why it is run so', () => {
    const document = changed(
      [['site', 'altitude'], '1200 m'],
      [['templates', 'typeM', 'pressureWindow', 'acceptNone'], 'trial at part load'],
    );
    const compiled = compileSite(document, derivedPointIds);
    expect(compiled.ok && compiled.value.warnings.map(({ path }) => keyPath(path))).toEqual([
      'templates.typeM.pressureWindow',
    ]);
  });
});
