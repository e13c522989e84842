import { describe, expect, it } from 'vitest';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../../../../backend/src/evaluation/site/compile-site';
import { keyPath } from '../../../../../backend/src/evaluation/site/site-fault';
import { changed } from './change-document';

const entries = new Map([
  ['MARGIN-1', 'pressureDifference'],
  ['DEW-1', 'temperatureDifference'],
  ['COM-1', null],
] as const);

function faultsOf(document: unknown): string[] {
  const compiled = compileSite(document, derivedPointIds, entries);
  return compiled.ok ? [] : compiled.fault.map(({ path, message }) => `${keyPath(path)}: ${message}`);
}

const point = (unit: string, id: string, key: string) => ['units', unit, 'points', id, key];

/** One thing wrong, and what must be said about it: the key, and a part of the message. */
const rows: readonly (readonly [
  title: string,
  keys: readonly (string | number)[],
  value: unknown,
  key: string,
  message: RegExp,
])[] = [
  ['an unknown key', ['site', 'nmae'], 'x', 'site.nmae', /unknown key; known here are id, name/],
  ['a missing key', ['site', 'timeZone'], undefined, 'site.timeZone', /is missing; expected string/],
  [
    'a number where a quantity belongs',
    ['templates', 'typeM', 'ratedFlow'],
    346,
    'templates.typeM.ratedFlow',
    /such as 346 L\/min/,
  ],
  [
    'a quantity without unit of measure',
    ['templates', 'typeM', 'ratedFlow'],
    '346',
    'templates.typeM.ratedFlow',
    /no unit of measure; expected one of m3\/s/,
  ],
  [
    'a unit of measure of another quantity',
    ['templates', 'typeM', 'ratedFlow'],
    '346 kPa',
    'templates.typeM.ratedFlow',
    /"kPa" does not fit; expected one of/,
  ],
  [
    'an id with a dot',
    ['templates', 'typeM', 'branches', 'r.1'],
    {},
    'templates.typeM.branches.r.1',
    /not allowed: expected letters/,
  ],
  ['a time zone that is none', ['site', 'timeZone'], 'Mars/Olympus', 'site.timeZone', /IANA/],
  ['an altitude where nobody lives', ['site', 'altitude'], '9000 m', 'site.altitude', /expected -430 m to 5100 m/],
  ['an unknown hall', ['units', 'm1', 'hall'], 'south', 'units.m1.hall', /no hall "south"; known are north/],
  ['an unknown gateway', ['units', 'm1', 'gateway'], 'west', 'units.m1.gateway', /no gateway "west"/],
  ['an unknown template', ['units', 'm1', 'template'], 'typeX', 'units.m1.template', /no template "typeX"/],
  [
    'a template that leads back to itself',
    ['templates', 'typeM', 'template'],
    'typeM',
    'templates.typeM.template',
    /back to itself/,
  ],
  [
    'an unknown point',
    ['units', 'm1', 'points', 'supply.temprature'],
    { path: 'x', unit: '°C' },
    'units.m1.points.supply.temprature',
    /no measured point of a unit has this id/,
  ],
  [
    "a hall's point at a unit",
    ['units', 'm1', 'points', 'ambient.pressure'],
    { path: 'x', unit: 'hPa', reference: 'absolute' },
    'units.m1.points.ambient.pressure',
    /no measured point of a unit/,
  ],
  [
    'a derived point',
    ['units', 'm1', 'points', 'heatRemoved'],
    { path: 'x', unit: 'kW' },
    'units.m1.points.heatRemoved',
    /derived by Ebbline/,
  ],
  [
    'a branch that is not there',
    ['units', 'm1', 'points', 'branch.r9.flow'],
    { path: 'x', unit: 'L/min' },
    'units.m1.points.branch.r9.flow',
    /no branch "r9"/,
  ],
  [
    'a plate on a branch that is not there',
    ['templates', 'typeM', 'plates', 'p1', 'branch'],
    'r9',
    'templates.typeM.plates.p1.branch',
    /no branch "r9"/,
  ],
  [
    'a unit of measure that does not fit the point',
    point('m1', 'return.temperature', 'unit'),
    'kPa',
    'units.m1.points.return.temperature.unit',
    /"kPa" does not fit a temperature; expected one of degC/,
  ],
  [
    'a gas flow in bare L/min',
    point('m1', 'vacuum.exhaustFlow', 'unit'),
    'L/min',
    'units.m1.points.vacuum.exhaustFlow.unit',
    /expected one of free m3\/s/,
  ],
  [
    'a pressure without reference',
    point('m1', 'separator.pressure', 'reference'),
    undefined,
    'units.m1.points.separator.pressure.reference',
    /absolute, gauge or vacuum/,
  ],
  [
    'a reference of what is no pressure',
    point('m1', 'return.temperature', 'reference'),
    'gauge',
    'units.m1.points.return.temperature.reference',
    /pressures only/,
  ],
  [
    'a negative range of an absolute pressure',
    point('m1', 'separator.pressure', 'range'),
    '-100 to 60 kPa',
    'units.m1.points.separator.pressure.range',
    /did you mean reference: gauge/,
  ],
  [
    'a range upside down',
    point('m1', 'separator.pressure', 'range'),
    '160 to 0 kPa',
    'units.m1.points.separator.pressure.range',
    /swap/,
  ],
  [
    'a level in % without span',
    point('m1', 'supplyTank.level', 'span'),
    undefined,
    'units.m1.points.supplyTank.level.span',
    /what 0 % and 100 % mean/,
  ],
  [
    'a mass flow without density',
    point('m1', 'loop.flow', 'unit'),
    'kg/s',
    'units.m1.points.loop.flow.density',
    /is needed for a flow in kg\/s/,
  ],
  [
    'an accuracy that cannot be read',
    point('m1', 'separator.pressure', 'accuracy'),
    'good',
    'units.m1.points.separator.pressure.accuracy',
    /1 % of reading/,
  ],
  [
    'a platinum class of a pressure',
    point('m1', 'separator.pressure', 'accuracy'),
    'Pt100 A',
    'units.m1.points.separator.pressure.accuracy',
    /temperatures only/,
  ],
  [
    'a share of a span that is not given',
    point('m2', 'separator.pressure', 'range'),
    undefined,
    'units.m2.points.separator.pressure.accuracy',
    /needs `range`/,
  ],
  [
    'a word without meaning',
    point('m1', 'mode', 'words'),
    { RUN: 'runnning' },
    'units.m1.points.mode.words.RUN',
    /expected one of off, vented/,
  ],
  [
    'words of a number',
    point('m1', 'return.temperature', 'words'),
    { x: 'yes' },
    'units.m1.points.return.temperature.words',
    /yes\/no points and mode only/,
  ],
  [
    'a flow meter on no known hose',
    point('m1', 'loop.flow', 'hose'),
    undefined,
    'units.m1.points.loop.flow.hose',
    /supply or return/,
  ],
  [
    'a point that is nowhere',
    ['units', 'm2', 'points', 'loop.flow'],
    { unit: 'gpm', hose: 'return' },
    'units.m2.points.loop.flow',
    /nothing says where it is found/,
  ],
  [
    'a path without a topic',
    ['units', 'm2', 'points', 'loop.flow'],
    { unit: 'gpm', hose: 'return', path: 'x' },
    'units.m2.points.loop.flow',
    /`path` needs a topic/,
  ],
  [
    'a topic with a wildcard',
    point('m2', 'loop.flow', 'topic'),
    'small/+/flow',
    'units.m2.points.loop.flow.topic',
    /wildcards/,
  ],
  [
    'a placeholder that means nothing',
    point('m2', 'loop.flow', 'topic'),
    'small/{rack}/flow',
    'units.m2.points.loop.flow.topic',
    /\{rack\} means nothing here; known are \{site\}, \{hall\}, \{unit\}/,
  ],
  [
    'two points in one place',
    point('m1', 'return.temperature', 'path'),
    'supply.t',
    'units.m1.points.return.temperature',
    /gives "supply.t" to units.m1.points.supply.temperature already/,
  ],
  [
    'two points on one topic',
    point('m2', 'supplyTank.pressure', 'topic'),
    'small/m2/flow',
    'units.m2.points.loop.flow',
    /gives its number to units.m2.points.supplyTank.pressure already/,
  ],
  [
    'a topic that is JSON and a number',
    point('m2', 'supplyTank.pressure', 'topic'),
    'small/m2/return/t',
    'units.m2.points.supplyTank.pressure',
    /JSON for one point and a bare number for another/,
  ],
  [
    'a time of a bare number',
    point('m2', 'loop.flow', 'time'),
    { path: 't', form: 'iso' },
    'units.m2.points.loop.flow.time',
    /carries no time/,
  ],
  [
    'a status on the topic of a point',
    ['gateways', 'east', 'status', 'topic'],
    'small/m2/flow',
    'gateways.east.status.topic',
    /a status has a topic of its own/,
  ],
  ['a filter that is none', ['intake', 'subscriptions'], ['small/#/x'], 'intake.subscriptions.0', /only at the end/],
  ['a missing shape', ['templates', 'typeM', 'shape'], undefined, 'units.m1.shape', /expected a, b or c/],
  [
    'a missing height that a margin hangs on',
    ['templates', 'typeM', 'elevations', 'supplyTankSurface'],
    undefined,
    'templates.typeM.elevations.supplyTankSurface',
    /the vacuum margin/,
  ],
  [
    'a missing pump inlet',
    ['templates', 'typeM', 'elevations', 'pumpInlet'],
    undefined,
    'templates.typeM.elevations.pumpInlet',
    /npshLimit/,
  ],
  [
    'a missing height of a sensor',
    ['templates', 'typeM', 'elevations', 'supplySensor'],
    undefined,
    'templates.typeM.elevations.supplySensor',
    /supply.pressure is measured there/,
  ],
  [
    'a wetted place without a height',
    ['templates', 'typeM', 'nodes', 'topReturn', 'elevation'],
    undefined,
    'templates.typeM.nodes.topReturn.elevation',
    /is missing|height above/,
  ],
  [
    'no wetted place on a main',
    ['templates', 'typeM', 'nodes'],
    { s: { main: 'supply', elevation: '0 m' } },
    'templates.typeM.nodes',
    /no wetted place on the return main/,
  ],
  [
    'a vacuum curve that falls',
    ['templates', 'typeM', 'vacuumSource', 'curve', 1, 'pressure'],
    '4 kPa',
    'templates.typeM.vacuumSource.curve.1.pressure',
    /rise from row to row/,
  ],
  [
    'an unknown catalogue entry',
    ['limits', 'MARGIN-9'],
    { limit: '5 kPa' },
    'limits.MARGIN-9',
    /no entry "MARGIN-9"; known are MARGIN-1/,
  ],
  [
    'a limit of another quantity',
    ['units', 'm1', 'limits', 'MARGIN-1', 'limit'],
    '5 K',
    'units.m1.limits.MARGIN-1.limit',
    /"K" does not fit/,
  ],
  [
    'a limit of an entry that has none',
    ['limits', 'COM-1'],
    { limit: '5 kPa' },
    'limits.COM-1.limit',
    /has no limit to change/,
  ],
  ['a hall and a unit of one id', ['halls', 'm1'], { name: 'Twin' }, 'units.m1', /a hall has this id already/],
  [
    'no pressure window at this altitude',
    ['site', 'altitude'],
    '1200 m',
    'templates.typeM.pressureWindow',
    /no pressure window at 1200 m/,
  ],
];

describe('compileSite: what is wrong with a site file', () => {
  it.each(rows)('tells of %s', (_title, keys, value, key, message) => {
    const faults = faultsOf(changed([keys, value]));
    const about = faults.filter((fault) => fault.startsWith(`${key}: `));
    expect(about.join('\n'), `all faults:\n${faults.join('\n')}`).toMatch(message);
  });

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
