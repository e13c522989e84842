import { modeWords } from '../src/payload/payload-row';

/** How the payloads of each hall are read: YAML blocks of the demo site's file. */
const pipe = 'unit: kPa, reference: gauge, accuracy: ±0.4 kPa, range: -100 to 60 kPa';
const tank = 'unit: kPa, reference: absolute, accuracy: ±0.4 kPa, range: 0 to 160 kPa';
const wide = 'unit: kPa, reference: absolute, accuracy: ±0.4 kPa, range: 0 to 300 kPa';
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
      pump.speed: { path: pump.speed, unit: '%', accuracy: 0.5 %, range: 0 to 100 % }
      pump.power: { path: pump.w, unit: W, accuracy: 1 % of reading, range: 0 to 10000 W }
      pump.running: { path: pump.run }
      vacuum.speed: { path: vacuum.speed, unit: '%', range: 0 to 100 % }
      vacuum.running: { path: vacuum.run }
      vacuum.exhaustFlow: { path: vacuum.exhaust, unit: free L/min, accuracy: 3 % of reading, range: 0 to 2000 free L/min }
      valve.command: { path: valve.command, unit: '%', range: 0 to 100 % }
      valve.position: { path: valve.position, unit: '%', accuracy: 1 %, range: -3 to 103 % }
      unit.power: { path: power, unit: W, accuracy: 1 % of reading, range: 0 to 30000 W }
      water.found: { path: rope, words: { wet: 'yes', dry: 'no' } }
      mode: { path: mode, words: { ${Object.entries(modeWords)
        .map(([mode, word]) => `${word}: ${mode}`)
        .join(', ')} } }
      branch.*.flow: { path: 'racks.{branch}.flow', unit: L/min, accuracy: 2 % of reading, range: 0 to 200 L/min }
      branch.*.return.temperature: { path: 'racks.{branch}.t', ${pt100} }
      branch.*.return.pressure: { path: 'racks.{branch}.p', ${tank} }
      branch.*.power: { path: 'racks.{branch}.w', unit: W, accuracy: 1 % of reading, range: 0 to 200000 W }
      plate.*.temperature: { path: 'chips.{plate}.t', unit: °C, accuracy: ±1 °C, range: 0 to 130 °C }
      plate.*.power: { path: 'chips.{plate}.w', unit: W, accuracy: 4 % of reading, range: 0 to 4000 W }
      separator.levelHigh: { path: separator.high }
      supplyTank.vent.command: { path: tank.ventCommand, unit: '%', range: 0 to 100 % }
      supplyTank.vent.position: { path: tank.ventPosition, unit: '%', range: -3 to 103 % }
      topUp.volume: { path: topUp, unit: L, accuracy: 2 % of reading, range: 0 to 1000000 L }
      pump.discharge.pressure: { path: pump.outlet, ${wide} }
      pump.command: { path: pump.ordered }
      vacuum.command: { path: vacuum.ordered }
      vacuum.available: { path: vacuum.standbyReady }
      vacuum.standby.running: { path: vacuum.standbyRun }
      vacuum.sealWater.temperature: { path: vacuum.seal, ${pt100} }
      supply.setPoint: { path: set.t, unit: °C }
      supplyTank.setPoint: { path: set.tank, unit: kPa, reference: absolute }
      separator.setPoint: { path: set.separator, unit: kPa, reference: absolute }
      control.manual: { path: hand }
      tray.water.found: { path: tray, words: { wet: 'yes', dry: 'no' } }
`;

/** What only units with a rich set of sensors tell, beside the rest. */
export const northRichPoints = `      transfer.flow: { path: transfer.flow, unit: L/min, accuracy: 0.5 % of reading, range: 0 to 1500 L/min }
      vacuum.power: { path: vacuum.w, unit: W, accuracy: 1 % of reading, range: 0 to 20000 W }
      vacuum.trap.full: { path: vacuum.trap }
      vacuum.bleedFlow: { path: vacuum.bleed, unit: free L/min, accuracy: 3 % of reading, range: 0 to 2000 free L/min }
      water.conductivity: { path: water.conductivity, unit: µS/cm, accuracy: 3 % of reading, range: 0 to 2000 µS/cm }
      water.ph: { path: water.ph, accuracy: ±0.1, range: 0 to 14 }
      water.inhibitor: { path: water.inhibitor, unit: mg/L, accuracy: 5 % of reading }
      branch.*.isolated: { path: 'racks.{branch}.shut' }
      branch.*.water.found: { path: 'racks.{branch}.rope', words: { wet: 'yes', dry: 'no' } }
      server.*.return.temperature: { path: 'servers.{server}.t', ${pt100} }
      server.*.power: { path: 'servers.{server}.w', unit: W, accuracy: 4 % of reading, range: 0 to 30000 W }
      server.*.fanSpeed: { path: 'servers.{server}.fan', unit: '%', range: 0 to 100 % }
`;

const wideBar = 'unit: bar, reference: absolute, accuracy: ±0.004 bar, range: 0 to 3 bar';
const bar = 'unit: bar, reference: absolute, accuracy: ±0.004 bar, range: 0 to 1.6 bar';
const mbar = 'unit: mbar, reference: gauge, accuracy: ±4 mbar, range: -1000 to 600 mbar';
const flat = (point: string): string => `[values, ${point.replace(/^(branch|plate|server|tank)\.\*/, '$1.{$1}')}]`;

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
  ['pump.speed', "unit: '%', accuracy: 0.5 %, range: 0 to 100 %"],
  ['pump.power', 'unit: kW, accuracy: 1 % of reading, range: 0 to 10 kW'],
  ['pump.running', ''],
  ['vacuum.speed', "unit: '%', range: 0 to 100 %"],
  ['vacuum.running', ''],
  ['vacuum.exhaustFlow', 'unit: free m³/h, accuracy: 3 % of reading, range: 0 to 120 free m³/h'],
  ['valve.command', "unit: '%', range: 0 to 100 %"],
  ['valve.position', "unit: '%', accuracy: 1 %, range: -3 to 103 %"],
  ['unit.power', 'unit: kW, accuracy: 1 % of reading, range: 0 to 30 kW'],
  ['water.found', ''],
  ['branch.*.flow', 'unit: m³/h, accuracy: 0.5 % of reading, range: 0 to 30 m³/h'],
  ['branch.*.return.temperature', pt100],
  ['branch.*.return.pressure', bar],
  ['branch.*.power', 'unit: kW, accuracy: 1 % of reading, range: 0 to 200 kW'],
  ['plate.*.temperature', 'unit: °C, accuracy: ±1 °C, range: 0 to 130 °C'],
  ['plate.*.power', 'unit: W, accuracy: 4 % of reading, range: 0 to 4000 W'],
  ['mode', ''],
  ['separator.levelHigh', ''],
  ['supplyTank.vent.command', "unit: '%', range: 0 to 100 %"],
  ['supplyTank.vent.position', "unit: '%', range: -3 to 103 %"],
  ['topUp.volume', 'unit: L, accuracy: 2 % of reading, range: 0 to 1000000 L'],
  ['pump.discharge.pressure', wideBar],
  ['pump.command', ''],
  ['vacuum.command', ''],
  ['vacuum.available', ''],
  ['vacuum.standby.running', ''],
  ['vacuum.sealWater.temperature', pt100],
  ['supply.setPoint', 'unit: °C'],
  ['supplyTank.setPoint', 'unit: bar, reference: absolute'],
  ['separator.setPoint', 'unit: bar, reference: absolute'],
  ['control.manual', ''],
  ['tray.water.found', ''],
];

const southRichRows: readonly (readonly [point: string, rest: string])[] = [
  ['transfer.flow', 'unit: m³/h, accuracy: 0.5 % of reading, range: 0 to 120 m³/h'],
  ['vacuum.power', 'unit: kW, accuracy: 1 % of reading, range: 0 to 20 kW'],
  ['vacuum.trap.full', ''],
  ['vacuum.bleedFlow', 'unit: free m³/h, accuracy: 3 % of reading, range: 0 to 120 free m³/h'],
  ['water.conductivity', 'unit: µS/cm, accuracy: 3 % of reading, range: 0 to 2000 µS/cm'],
  ['water.ph', 'accuracy: ±0.1, range: 0 to 14'],
  ['water.inhibitor', 'unit: mg/L, accuracy: 5 % of reading'],
  ['branch.*.isolated', ''],
  ['branch.*.water.found', ''],
  ['server.*.return.temperature', pt100],
  ['server.*.power', 'unit: W, accuracy: 4 % of reading, range: 0 to 30000 W'],
];
const tankRows: readonly (readonly [point: string, rest: string])[] = [
  ['tank.*.level', 'unit: m, accuracy: ±3 mm, range: 0 to 1.5 m'],
  ['tank.*.pressure', bar],
  ['tank.*.filling', ''],
];

const southLines = (rows: readonly (readonly [point: string, rest: string])[]): string =>
  rows
    .map(([point, rest]) => {
      const path = flat(point).replaceAll(/(\S*\{\w+\}\S*?)\]/g, "'$1']");
      return `      ${point}: { path: ${path}${rest === '' ? '' : `, ${rest}`} }\n`;
    })
    .join('');

export const southRichPoints = southLines(southRichRows);
export const alternatingPoints = southLines(tankRows);
/** Shape (c): its pump's inlet is measured. */
export const reservoirPoints = southLines([['pump.inlet.pressure', bar]]);

export const southPoints = `    topic: quillmere/south/{unit}
    time: { path: ts, form: epochSeconds }
    points:
${southLines(southRows)}`;

export const hallPoints = `    points:
      ambient.pressure: { path: barometer, unit: hPa, reference: absolute, accuracy: ±1 hPa, range: 850 to 1080 hPa, period: 5 s }
      hall.temperature: { path: t, ${pt100}, period: 5 s }
      hall.humidity: { path: rh, unit: '%', accuracy: 2.5 %, range: 0 to 100 %, period: 5 s }
`;
