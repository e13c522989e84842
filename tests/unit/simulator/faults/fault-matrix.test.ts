import { describe, expect, test } from 'vitest';
import { faultKinds, faultSizes, type FaultSize } from '../../../../simulator/src/faults/fault';
import type { UnitKind } from '../../../../simulator/src/plant/plant-parameters';
import type { Readings } from '../../../../simulator/src/plant/plant-readings';
import { plantOf, RunningPlant } from '../run-plant';
import { noiseOfPoint } from './noise-of-point';
import { airRows } from './rows/air';
import { facilityRows } from './rows/facility';
import type { FaultRow } from './rows/fault-row';
import { powerRows } from './rows/power-and-vent';
import { pumpRows } from './rows/pump-and-filter';
import { rackRows } from './rows/racks';
import { vacuumRows } from './rows/vacuum';
import { waterRows } from './rows/water';

const rows: readonly FaultRow[] = [
  ...airRows,
  ...vacuumRows,
  ...pumpRows,
  ...rackRows,
  ...facilityRows,
  ...waterRows,
  ...powerRows,
];
const kinds: readonly UnitKind[] = ['M', 'H', 'bench'];
/** Deviations of a sensor's noise beyond which a change counts as seen. */
const seen = 5;
/** Standing faults have come to rest after so long, s. */
const standingS = 600;

/** Seconds of a run: readings with the hall's barometer beside them. */
function runOf(row: FaultRow, kind: UnitKind, size: FaultSize): { before: Readings; series: Readings[] } {
  const plant = new RunningPlant(plantOf(kind));
  const read = (): Readings => plant.read().set('ambient.pressure', plant.inputs.ambientPa);
  for (const order of row.standing ?? []) plant.start(order);
  if (row.standing) plant.after(standingS);
  const before = read();
  plant.start({ ...row.order, size });
  for (const order of row.together ?? []) plant.start(order);
  const series = Array.from({ length: row.runS }, () => {
    plant.after(1);
    return read();
  });
  return { before, series };
}

describe.each(kinds)('on %s', (kind) => {
  const own = rows.filter((row) => (row.kinds ?? kinds).includes(kind));
  const cases = own.flatMap((row) =>
    (row.sizes ?? faultSizes).map((size) => [nameOf(row), size, row.because, row] as const),
  );
  test.each(cases)('%s (%s) moves what it must and leaves the rest: %s', (_fault, size, _because, row) => {
    const { before, series } = runOf(row, kind, size);
    for (const [point, { way, withinS }] of Object.entries(row.moves)) {
      const start = valueOf(before, point);
      const limit = seen * noiseOfPoint(point, start);
      const first = series.findIndex((readings) => Math.abs(valueOf(readings, point) - start) > limit);
      expect(first, `${point} has to move`).toBeGreaterThanOrEqual(0);
      expect(first + 1, `${point} has to move in time`).toBeLessThanOrEqual(withinS);
      const change = valueOf(series[first] ?? before, point) - start;
      expect(change > 0 ? 'up' : 'down', `${point}, direction`).toBe(way);
    }
    for (const [point, bound] of Object.entries(row.stays)) {
      const start = valueOf(before, point);
      const most = Math.max(bound, seen * noiseOfPoint(point, start));
      const worst = Math.max(...series.map((readings) => Math.abs(valueOf(readings, point) - start)));
      expect(worst, `${point} has to stay`).toBeLessThanOrEqual(most);
    }
  });

  test.each(faultKinds.filter((fault) => fault !== 'connectionLost'))('every size of %s stands in a row', (fault) => {
    const told = own.filter((row) => row.order.fault === fault).flatMap((row) => row.sizes ?? faultSizes);
    expect(new Set(told)).toEqual(new Set(faultSizes));
  });
});

function nameOf({ order, standing, together }: FaultRow): string {
  const details = [order.option, order.checkValve, order.direction].filter((word) => word !== undefined);
  const others = [...(standing ?? []), ...(together ?? [])].map(({ fault }) => fault);
  return [order.fault, ...details, ...others.map((other) => `with ${other}`)].join(' ');
}

function valueOf(readings: Readings, point: string): number {
  const value = readings.get(point);
  if (value === undefined) throw new Error(`the plant tells no ${point}`);
  return value;
}
