import { benchPoints, branches, plates } from './bench-points';

export const unitId = (index: number): string => `u${String(index + 1).padStart(5, '0')}`;
export const hallId = (index: number): string => `h${String(index + 1).padStart(3, '0')}`;
export const unitsInHall = 50;
export const topicOf = (index: number): string => `bench/${unitId(index)}`;

/** A site file of so many equal units with one JSON object each. */
export function benchSite(units: number, inHall = unitsInHall): string {
  const halls = Array.from({ length: Math.ceil(units / inHall) }, (_, i) => hallId(i));
  return [
    head,
    ...benchPoints.map(
      ({ id, describe }) => `      ${id}: { ${[`path: ['${id}']`, describe].filter(Boolean).join(', ')} }`,
    ),
    'halls:',
    ...halls.map((id) => `  ${id}: { name: Hall ${id} }`),
    'units:',
    ...Array.from({ length: units }, (_, i) => {
      const hall = hallId(Math.floor(i / inHall));
      return `  ${unitId(i)}: { name: Unit ${unitId(i)}, hall: ${hall}, template: bench }`;
    }),
    '',
  ].join('\n');
}

const head = `site: { id: bench, name: Bench site, timeZone: UTC, altitude: 0 m }
intake: { subscriptions: ['bench/+'] }
templates:
  bench:
    shape: a
    topic: bench/{unit}
    time: { path: time, form: epochMilliseconds }
    ratedFlow: 346 L/min
    ratedHeat: 208 kW
    supplySetPoint: 35 °C
    elevations: { supplyTankSurface: 1.0 m, separatorSurface: 0.6 m, returnInlet: 1.2 m, pumpInlet: 0.15 m, supplySensor: 0.9 m, returnSensor: 1.1 m }
    pump: { npshLimit: 2.1 m, suctionLoss: 2.4 kPa }
    nodes:
      floorSupply: { main: supply, elevation: -0.5 m, loss: 3.0 kPa }
      topReturn: { main: return, elevation: 2.0 m, loss: 6.0 kPa }
    hoseBore: 5 mm
    vacuumSource: { curve: [{ pressure: 5 kPa, suction: 30 m3/h }, { pressure: 101 kPa, suction: 234 m3/h }] }
    branches: { ${branches.map((id) => `${id}: { ratedFlow: 86 L/min }`).join(', ')} }
    plates: { ${plates.map((id, i) => `${id}: { branch: ${branches[i] ?? 'r1'}, elevation: 1.3 m }`).join(', ')} }
    points:`;
