import { platesOf } from '../src/payload/plan-payload';
import { hallTopic, statusTopic } from '../src/payload/messages';
import { branchId } from '../src/plant/plant-readings';
import type { PlantParameters, UnitKind } from '../src/plant/plant-parameters';
import { unitTypes } from '../src/plant/unit-types';
import { demoFleet, type FleetUnit, type HallId } from '../src/scenario/demo-fleet';
import { seededRandom } from '../src/scenario/seeded-random';
import { within, type RandomSource } from '../src/sensors/random-source';
import { hallPoints, northPoints, southPoints } from './site-points';

/** As a surveyor and a commissioning team would find them: half-widths. */
const heightM = 0.05;
const lossShare = 0.05;
const flowShare = 0.01;
const curveShare = 0.03;
const boreShare = 0.02;
const areaShare = 0.01;

const drawSeed = 20;

/**
 * Writes the demo site's file. What the plant truly is stays in `src/plant`; the file holds what was measured at
 * it: every figure is drawn once within the accuracy of its measurement, so that none is the plant's own.
 */
export function drawSite(): string {
  const source = seededRandom(drawSeed, 'site survey');
  return [
    head,
    'templates:',
    '  # How the gateways of each hall write their telemetry.',
    template('north', northPoints),
    template('south', southPoints),
    '  # What was found at each type of unit when it was commissioned.',
    typeTemplate('M', 'north', source),
    typeTemplate('bench', 'north', source),
    typeTemplate('H', 'south', source),
    'halls:',
    hallBlock('north', 'North hall'),
    hallBlock('south', 'South hall'),
    'gateways:',
    ...gateways().map((id) => `  ${id}: { status: { topic: ${statusTopic(id)}, online: online } }`),
    '',
    'units:',
    ...demoFleet.map((unit) => unitBlock(unit, source)),
  ].join('\n');
}

const head = `# The demo site: two halls and twelve units of our own invention, fed by the simulator.
# Drawn once by simulator/demo-site/draw-site.ts; see simulator/README.md.
site:
  id: quillmere
  name: Quillmere (demo)
  timeZone: Etc/UTC
  altitude: 25 m
  demo: true

intake:
  subscriptions: ['quillmere/#']
`;

const hallBlock = (id: HallId, name: string): string => `  ${id}:
    name: ${name}
    topic: ${hallTopic(id)}
    time: { path: time, form: iso }
${hallPoints}`;

const gateways = (): string[] => [...new Set(demoFleet.map(({ gateway }) => gateway))];

const template = (id: string, body: string): string => `  ${id}:\n${body}`;

function typeTemplate(kind: UnitKind, hall: string, source: RandomSource): string {
  const type = unitTypes[kind];
  const { lossPa, boreM, volumeM3 } = type;
  const share = (value: number, half: number): number => value * (1 + half * within(source));
  const kPa = (pa: number): string => `${(share(pa, lossShare) / 1000).toFixed(2)} kPa`;
  const height = (metres: number): string => `${(metres + heightM * within(source)).toFixed(2)} m`;
  const { floorMain, manifoldTop } = type.elevationM;
  const racks = Array.from({ length: type.racks }, (_, r) => r);
  const flow = share(type.ratedFlowM3PerS * 60000, flowShare);
  const decimals = kind === 'bench' ? 3 : 1;
  return `  type-${kind}:
    template: ${hall}
    shape: a
    ratedFlow: ${flow.toFixed(decimals)} L/min
    ratedHeat: ${ratedHeatKW[kind]} kW
    supplySetPoint: ${type.set.supplyC} °C
    pump: { npshLimit: 2.1 m, suctionLoss: ${kPa(lossPa.pumpSuction)} }
    tanks:
      supplyArea: ${share(volumeM3.supplyTankAreaM2 * 1e4, areaShare).toFixed(0)} cm2
      separatorArea: ${share(volumeM3.separatorAreaM2 * 1e4, areaShare).toFixed(0)} cm2
    nodes:
      supply-low: { name: Supply main at its lowest, main: supply, elevation: ${height(floorMain)}, loss: ${kPa(lossPa.supplyToLowPoint)} }
      supply-top: { name: Top of the supply manifolds, main: supply, elevation: ${height(manifoldTop)}, loss: ${kPa(lossPa.main + lossPa.hoseAndManifold)} }
      return-top: { name: Top of the return manifolds, main: return, elevation: ${height(manifoldTop)}, loss: ${kPa(lossPa.main + lossPa.hoseAndManifold)} }
      return-low: { name: Return main at its lowest, main: return, elevation: ${height(floorMain)}, loss: ${kPa(lossPa.main)} }
    hoseBore: ${(share(boreM.outlet, boreShare) * 1000).toFixed(1)} mm
    vacuumSource:
      count: ${type.vacuum.sources}
      curve:
${curve(type, source)}
${kind === 'bench' ? benchLimits : ''}    branches:
${racks.map((r) => `      ${branchId(r)}: { name: Rack ${r + 1}, ratedFlow: ${(share(flow, flowShare) / type.racks).toFixed(decimals)} L/min }`).join('\n')}
`;
}

/** A hose of the bench is so narrow that a slit in it draws 29 free L/min, and its sound loop moves by less than one. */
const benchLimits = `    limits:
      AIR-1: { limit: 6 free L/min }
`;

/** Chip heat into the water at rated load, as a type plate would say. */
const ratedHeatKW: Readonly<Record<UnitKind, number>> = { M: 208, H: 600, bench: 2 };

/** Suction as blank-off and orifices would have given it at commissioning. */
function curve(type: PlantParameters, source: RandomSource): string {
  const sweptM3PerH = type.vacuum.sweptM3PerS * 3600;
  return [8, 15, 25, 32, 45, 65, 101]
    .map((kPa) => {
      const suction = sweptM3PerH * (1 - (4.2 / kPa) ** 1.5) * (1 + curveShare * within(source));
      return `        - { pressure: ${kPa} kPa, suction: ${suction.toFixed(1)} m3/h }`;
    })
    .join('\n');
}

function unitBlock(unit: FleetUnit, source: RandomSource): string {
  const { elevationM } = unitTypes[unit.kind];
  const height = (metres: number): string => `${(metres + heightM * within(source)).toFixed(2)} m`;
  const racks = Array.from({ length: unitTypes[unit.kind].racks }, (_, r) => r);
  const plates = racks.flatMap((r) => platesOf(unit, r).map((id) => ({ id, r })));
  const points = extraPoints(unit);
  return `  ${unit.id}:
    name: ${names[unit.kind]} ${unit.id}
    hall: ${unit.hall}
    template: type-${unit.kind}
    gateway: ${unit.gateway}
    elevations:
      supplyTankSurface: ${height(elevationM.supplySurface)}
      separatorSurface: ${height(elevationM.separatorSurface)}
      returnInlet: ${height(elevationM.returnInlet)}
      pumpInlet: ${height(elevationM.pumpEye)}
      supplySensor: ${height(elevationM.supplySensor)}
      returnSensor: ${height(elevationM.returnSensor)}
      accuracy: 5 cm
    plates:
${plates.map(({ id, r }) => `      ${id}: { name: Chip ${id}, branch: ${branchId(r)}, elevation: ${height(1.1)} }`).join('\n')}
${points.length > 0 ? `    points:\n${points.map((line) => `      ${line}\n`).join('')}` : ''}`;
}

const names: Readonly<Record<UnitKind, string>> = { M: 'Unit', H: 'Unit', bench: 'Bench' };

function extraPoints(unit: FleetUnit): string[] {
  const points: string[] = [];
  if (!unit.exhaustMeter) points.push('vacuum.exhaustFlow: ~');
  if (unit.kind === 'bench') {
    points.push(
      '# Read by hand and sent by any MQTT client as a bare number; the simulator does not publish it.',
      'water.conductivity: { topic: quillmere/bench/conductivity, unit: µS/cm, range: 0 to 2000 µS/cm, accuracy: 3 % of reading, period: 7 d }',
    );
  }
  return points;
}
