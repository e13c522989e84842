import { lacks } from '../src/payload/sensor-sets';
import { platesOf, serversOf } from '../src/payload/plan-payload';
import { hallTopic, statusTopic } from '../src/payload/messages';
import { northPayload } from '../src/payload/north-payload';
import { southPayload } from '../src/payload/south-payload';
import { branchId } from '../src/plant/plant-readings';
import { demoFleet, type FleetUnit, type HallId } from '../src/scenario/demo-fleet';
import { handEntries } from '../src/scenario/hand-entries';
import { seededRandom } from '../src/scenario/seeded-random';
import { plantTypeOf, plantTypes, racksOf, type PlantTypeId } from '../src/scenario/unit-parameters';
import { within, type RandomSource } from '../src/sensors/random-source';
import { drawType } from './draw-type';
import { hallPoints, northPoints, northRichPoints, southPoints, southRichPoints } from './site-points';
import { heightM, siteElevations } from './survey';

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
    ...typesUsed().map(([id, hall]) => drawType(id, hall, source)),
    '  # Units with a rich set of sensors tell more.',
    ...richTypes().map(([id, hall]) => richTemplate(id, hall)),
    'halls:',
    hallBlock('north', 'North hall'),
    hallBlock('south', 'South hall'),
    'gateways:',
    ...gateways().map((id) => `  ${id}: { status: { topic: ${statusTopic(id)}, online: online } }`),
    '',
    'loops:',
    ...loops().map(
      ([id, units]) => `  ${id}: { name: Pair ${units.join(' and ')}, units: [${units.join(', ')}], unitsNeeded: 1 }`,
    ),
    '',
    'units:',
    ...demoFleet.map((unit) => unitBlock(unit, source)),
  ].join('\n');
}

const head = `# The demo site: two halls and sixteen units of our own invention, fed by the simulator.
# Drawn once by simulator/demo-site/draw-site.ts; see simulator/README.md.
site:
  id: quillmere
  name: Quillmere (demo)
  timeZone: Etc/UTC
  altitude: 25 m
  demo: true

intake:
  subscriptions: ['quillmere/#']

# Neither has a default: what is right depends on the inhibitor in use.
limits:
  CHEM-1: { low: 5 µS/cm, limit: 100 µS/cm }
  CHEM-4: { low: 700 mg/L }
`;

const hallBlock = (id: HallId, name: string): string => `  ${id}:
    name: ${name}
    topic: ${hallTopic(id)}
    time: { path: time, form: iso }
${hallPoints}`;

const gateways = (): string[] => [...new Set(demoFleet.map(({ gateway }) => gateway))];

const template = (id: string, body: string): string => `  ${id}:\n${body}`;

type TypeInHall = readonly [id: PlantTypeId, hall: HallId];

const typesOf = (units: readonly FleetUnit[]): readonly TypeInHall[] => [
  ...new Map(
    units.map((unit): [PlantTypeId, TypeInHall] => [plantTypeOf(unit), [plantTypeOf(unit), unit.hall]]),
  ).values(),
];
const typesUsed = (): readonly TypeInHall[] => typesOf(demoFleet);
const richTypes = (): readonly TypeInHall[] => typesOf(demoFleet.filter(({ sensorSet }) => sensorSet === 'rich'));

/** Bands of the water, and what people type of it. */
const typedByPeople = `    # People type these; each is asked for again after its interval.
    water:
      molybdateShownAs: MoO4
      parameters:
        ph: { due: 30 d, lastCalibration: 2026-02-16 }
        molybdate: { low: 30 mg/L, high: 60 mg/L, as: Mo, due: 30 d, basis: 'near 40 mg/L as Mo (common practice, no source)' }
        copper: { due: 90 d }
        chloride: { due: 90 d }
        bacteria: { due: 30 d }
`;

const richTemplate = (id: PlantTypeId, hall: HallId): string => `  type-${id}-rich:
    template: type-${id}
${typedByPeople}    points:
${hall === 'north' ? northRichPoints : southRichPoints}`;

/** Loops that several units share. */
function loops(): [string, string[]][] {
  const ids = [...new Set(demoFleet.flatMap(({ loop }) => (loop === null ? [] : [loop])))];
  return ids.map((id) => [id, demoFleet.filter(({ loop }) => loop === id).map((unit) => unit.id)]);
}

function unitBlock(unit: FleetUnit, source: RandomSource): string {
  const type = plantTypeOf(unit);
  const elevations = siteElevations(unit).map(
    ([key, metres]) => `      ${key}: ${(metres + heightM * within(source)).toFixed(2)} m`,
  );
  const height = (metres: number): string => `${(metres + heightM * within(source)).toFixed(2)} m`;
  const racks = Array.from({ length: racksOf(unit) }, (_, r) => r);
  const plates = racks.flatMap((r) => platesOf(unit, r).map((id) => ({ id, r })));
  const rich = unit.sensorSet === 'rich';
  const points = ownPoints(unit);
  return `  ${unit.id}:
    name: ${unit.kind === 'bench' ? 'Bench' : 'Unit'} ${unit.id}
    hall: ${unit.hall}
    template: type-${type}${rich ? '-rich' : ''}
    gateway: ${unit.gateway}
    elevations:
${elevations.join('\n')}
      accuracy: 5 cm
    vacuumSource: { control: ${unit.exhaustMeter ? 'speed' : 'startStop'} }
    commissioning: { gasLoad: ${tightGasLoad(unit, source)} }
${rich ? `    servers:\n${racks.flatMap((r) => serversOf(r).map((id) => `      ${id}: { name: Server ${id}, branch: ${branchId(r)} }`)).join('\n')}\n` : ''}    plates:
${plates.map(({ id, r }) => `      ${id}: { name: Chip ${id}, branch: ${branchId(r)}${rich ? `, server: ${id}` : ''}, elevation: ${height(1.1)} }`).join('\n')}
${points.length > 0 ? `    points:\n${points.map((line) => `      ${line}\n`).join('')}` : ''}`;
}

/** Dissolved air that a litre a minute of water brings to the separator: a tenth of 2.3 free L/min at 346. From memory. */
const dissolvedShare = 0.23 / 346;

/** Gas load of the loop as it was found tight: its own in-leak and what the water brings. */
function tightGasLoad(unit: FleetUnit, source: RandomSource): string {
  const type = plantTypes[plantTypeOf(unit)];
  const litres =
    unit.inLeakLPerMin +
    60_000 * (type.baseInLeakFreeM3PerS + (unit.shape === 'c' ? 0 : dissolvedShare * type.ratedFlowM3PerS));
  return `${(litres * (1 + 0.05 * within(source))).toFixed(2)} free L/min`;
}

/** What the unit's template gives and it has not, and what is read by hand. */
function ownPoints(unit: FleetUnit): string[] {
  const rows = unit.hall === 'north' ? northPayload : southPayload;
  const given = unit.hall === 'north' ? northPoints : southPoints;
  const missing = rows.filter(({ point }) => lacks(unit, point) && given.includes(`      ${point}:`));
  const hand = handEntries.filter((entry) => entry.unit === unit.id);
  return [
    ...missing.map(({ point }) => `${point}: ~`),
    ...hand.flatMap(({ point, topic }) => [
      '# Read by hand and sent by any MQTT client as a bare number; the simulator publishes it only when told.',
      `${point}: { topic: ${topic}, unit: µS/cm, range: 0 to 2000 µS/cm, accuracy: 3 % of reading, period: 7 d }`,
    ]),
  ];
}
