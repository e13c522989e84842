import { sensorKinds, type SensorKind } from '../../../../simulator/src/sensors/sensor-kind';
import { sensorKindOf } from '../../../../simulator/src/sensors/sensor-of-point';

/** A controller's own numbers leave it with two decimals of a per cent; a tenth of a per cent counts as its noise. */
const ownNumbers = 1e-3;

/** Deviation of a sensor's noise at 1 s on a reading, SI. Coarse steps count as even noise of their width. */
export function noiseOfPoint(point: string, value: number): number {
  // told as the loop's own flow is
  if (point === 'transfer.flow') return noiseOfPoint('loop.flow', value);
  const kind: SensorKind = sensorKinds[sensorKindOf(point, 'ultrasonicFlow')];
  const steps = kind.resolution / Math.sqrt(12);
  return Math.max(ownNumbers * floorOf(point), Math.hypot(kind.noise, kind.noiseShare * value, steps));
}

/** Size of one unit of what a point tells without a sensor: 1 for shares and yes/no, else what a reader cares for. */
function floorOf(point: string): number {
  if (point.endsWith('ressure') || point.endsWith('etPoint')) return 50_000;
  if (point.startsWith('vacuum.') && point.endsWith('Flow')) return 2 / 60;
  if (point.endsWith('temperature')) return 15;
  if (point === 'topUp.volume') return 0.1;
  if (point === 'water.conductivity') return 2e-2;
  if (point.endsWith('flow')) return 1e-3;
  if (point.endsWith('power')) return 1000;
  return 1;
}
