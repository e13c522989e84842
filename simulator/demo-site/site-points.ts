/** How the payloads of each hall are read: YAML blocks of the demo site's file. */
const pipe = 'unit: kPa, reference: gauge, accuracy: ±0.4 kPa, range: -100 to 60 kPa';
const tank = 'unit: kPa, reference: absolute, accuracy: ±0.4 kPa, range: 0 to 160 kPa';
const pt100 = 'unit: °C, accuracy: Pt100 A, range: 0 to 100 °C';

export const northPoints = `    topic: quillmere/north/{unit}/telemetry
    time: { path: time, form: iso }
    points:
      supply.temperature: { path: supply.t, ${pt100}, stuckAfter: 10 min }
      return.temperature: { path: return.t, ${pt100}, stuckAfter: 10 min }
      facility.supply.temperature: { path: facility.in, ${pt100} }
      facility.return.temperature: { path: facility.out, ${pt100} }
      supply.pressure: { path: supply.p, ${pipe} }
      return.pressure: { path: return.p, ${pipe} }
      supplyTank.pressure: { path: tank.p, ${tank}, stuckAfter: 10 min }
      separator.pressure: { path: separator.p, ${tank}, stuckAfter: 10 min }
      pump.inlet.pressure: { path: pump.inlet, ${tank} }
      loop.flow: { path: supply.flow, unit: L/min, hose: supply, accuracy: 0.5 % of reading, range: 0 to 1500 L/min, stuckAfter: 10 min }
      facility.flow: { path: facility.flow, unit: L/min, hose: facilitySupply, accuracy: 0.5 % of reading, range: 0 to 1500 L/min }
      supplyTank.level: { path: tank.level, unit: cm, accuracy: ±3 mm, range: 0 to 120 cm }
      separator.level: { path: separator.level, unit: cm, accuracy: ±3 mm, range: 0 to 120 cm }
      filter.pressureDrop: { path: filter.dp, unit: kPa, accuracy: ±0.2 kPa, range: -5 to 150 kPa }
      pump.speed: { path: pump.speed, unit: '%', range: 0 to 100 % }
      pump.power: { path: pump.w, unit: W, accuracy: 1 % of reading }
      pump.running: { path: pump.run }
      vacuum.speed: { path: vacuum.speed, unit: '%', range: 0 to 100 % }
      vacuum.running: { path: vacuum.run }
      vacuum.exhaustFlow: { path: vacuum.exhaust, unit: free L/min, accuracy: 3 % of reading, range: 0 to 2000 free L/min }
      valve.command: { path: valve.command, unit: '%', range: 0 to 100 % }
      valve.position: { path: valve.position, unit: '%', accuracy: 1 %, range: -3 to 103 % }
      unit.power: { path: power, unit: W, accuracy: 1 % of reading }
      water.found: { path: rope, words: { wet: 'yes', dry: 'no' } }
      mode: { path: mode, words: { RUN: running, STOP: off } }
      branch.*.flow: { path: 'racks.{branch}.flow', unit: L/min, accuracy: 2 % of reading, range: 0 to 200 L/min }
      branch.*.return.temperature: { path: 'racks.{branch}.t', ${pt100} }
      branch.*.return.pressure: { path: 'racks.{branch}.p', ${tank} }
      branch.*.power: { path: 'racks.{branch}.w', unit: W, accuracy: 1 % of reading }
      plate.*.temperature: { path: 'chips.{plate}.t', unit: °C, accuracy: ±1 °C, range: 0 to 130 °C }
      plate.*.power: { path: 'chips.{plate}.w', unit: W, accuracy: 4 % of reading }
`;

const bar = 'unit: bar, reference: absolute, accuracy: ±0.004 bar, range: 0 to 1.6 bar';
const mbar = 'unit: mbar, reference: gauge, accuracy: ±4 mbar, range: -1000 to 600 mbar';
const flat = (point: string): string =>
  `[values, ${point.replace('branch.*', 'branch.{branch}').replace('plate.*', 'plate.{plate}')}]`;

const southRows: readonly (readonly [point: string, rest: string])[] = [
  ['supply.temperature', `${pt100}, stuckAfter: 10 min`],
  ['return.temperature', `${pt100}, stuckAfter: 10 min`],
  ['facility.supply.temperature', pt100],
  ['facility.return.temperature', pt100],
  ['supply.pressure', mbar],
  ['return.pressure', mbar],
  ['supplyTank.pressure', `${bar}, stuckAfter: 10 min`],
  ['separator.pressure', `${bar}, stuckAfter: 10 min`],
  ['loop.flow', 'unit: m³/h, hose: supply, accuracy: 0.5 % of reading, range: 0 to 120 m³/h, stuckAfter: 10 min'],
  ['facility.flow', 'unit: m³/h, hose: facilitySupply, accuracy: 0.5 % of reading, range: 0 to 120 m³/h'],
  ['supplyTank.level', 'unit: m, accuracy: ±3 mm, range: 0 to 1.5 m'],
  ['separator.level', 'unit: m, accuracy: ±3 mm, range: 0 to 1.5 m'],
  ['filter.pressureDrop', 'unit: mbar, accuracy: ±2 mbar, range: -50 to 1500 mbar'],
  ['pump.speed', "unit: '%', range: 0 to 100 %"],
  ['pump.power', 'unit: kW, accuracy: 1 % of reading'],
  ['pump.running', ''],
  ['vacuum.speed', "unit: '%', range: 0 to 100 %"],
  ['vacuum.running', ''],
  ['vacuum.exhaustFlow', 'unit: free m³/h, accuracy: 3 % of reading, range: 0 to 120 free m³/h'],
  ['valve.command', "unit: '%', range: 0 to 100 %"],
  ['valve.position', "unit: '%', accuracy: 1 %, range: -3 to 103 %"],
  ['unit.power', 'unit: kW, accuracy: 1 % of reading'],
  ['water.found', ''],
  ['branch.*.flow', 'unit: m³/h, accuracy: 0.5 % of reading, range: 0 to 30 m³/h'],
  ['branch.*.return.temperature', pt100],
  ['branch.*.return.pressure', bar],
  ['branch.*.power', 'unit: kW, accuracy: 1 % of reading'],
  ['plate.*.temperature', 'unit: °C, accuracy: ±1 °C, range: 0 to 130 °C'],
  ['plate.*.power', 'unit: W, accuracy: 4 % of reading'],
];

export const southPoints = `    topic: quillmere/south/{unit}
    time: { path: ts, form: epochSeconds }
    points:
${southRows.map(([point, rest]) => `      ${point}: { path: ${flat(point).replaceAll(/(\S*\{\w+\}\S*?)\]/g, "'$1']")}${rest === '' ? '' : `, ${rest}`} }`).join('\n')}
`;

export const hallPoints = `    points:
      ambient.pressure: { path: barometer, unit: hPa, reference: absolute, accuracy: ±1 hPa, range: 850 to 1080 hPa, period: 5 s }
      hall.temperature: { path: t, ${pt100}, period: 5 s }
      hall.humidity: { path: rh, unit: '%', accuracy: 2.5 %, range: 0 to 100 %, period: 5 s }
`;
