import type { UnitKind } from '../plant/plant-parameters';
import type { BranchMeter } from '../sensors/sensor-of-point';

/** One unit of the demo site as the simulator builds it. Site and names are our own invention. */
export interface FleetUnit {
  readonly id: string;
  readonly hall: HallId;
  readonly kind: UnitKind;
  readonly shape: 'a' | 'b' | 'c';
  /** Id of the loop that it shares with others; null: alone. */
  readonly loop: string | null;
  readonly sensorSet: SensorSet;
  readonly gateway: string;
  readonly branchMeter: BranchMeter;
  /** Has it a meter in the vacuum exhaust? Those without start and stop their vacuum source. */
  readonly exhaustMeter: boolean;
  readonly platesPerRack: 1 | 2;
  /** Share of rated chip power that its work comes to over a day. */
  readonly meanLoad: number;
  /** Tightness, L/min of free air beside the type's own. */
  readonly inLeakLPerMin: number;
  /** Filter resistance against clean, and exchanger UA against new. */
  readonly filterLoad: number;
  readonly exchangerShare: number;
}

/** What has sensors: much more than usual, the usual, or hardly more than the unit's own controls need. */
export type SensorSet = 'rich' | 'usual' | 'poor';

export type HallId = 'north' | 'south';

export const siteId = 'quillmere';

const unit = (
  id: string,
  kind: UnitKind,
  gateway: string,
  meanLoad: number,
  own: Partial<FleetUnit> = {},
): FleetUnit => ({
  id,
  hall: id.startsWith('N') ? 'north' : 'south',
  kind,
  shape: 'a',
  loop: null,
  sensorSet: 'usual',
  gateway,
  branchMeter: kind === 'H' ? 'electromagneticFlow' : 'ultrasonicFlow',
  exhaustMeter: true,
  platesPerRack: 2,
  meanLoad,
  inLeakLPerMin: 0,
  filterLoad: 1,
  exchangerShare: 1,
  ...own,
});

/**
 * Six units of type M, five of type H, one bench, all of shape (a); two of type M on one loop (N8, N9); one with
 * alternating tanks (S6) and one with a pump from its reservoir (S7). N1 and N2 share a gateway.
 */
export const demoFleet: readonly FleetUnit[] = [
  unit('N1', 'M', 'north-a', 0.78, { inLeakLPerMin: 2.2, filterLoad: 1.1 }),
  unit('N2', 'M', 'north-a', 0.71, { inLeakLPerMin: 1.4, exchangerShare: 0.97 }),
  unit('N3', 'M', 'north-b', 0.82, { sensorSet: 'rich', inLeakLPerMin: 2.8, filterLoad: 1.3 }),
  unit('N4', 'M', 'north-c', 0.66, { exhaustMeter: false, platesPerRack: 1, inLeakLPerMin: 0.4 }),
  unit('N5', 'M', 'north-d', 0.75, { inLeakLPerMin: 3.1, exchangerShare: 0.92 }),
  unit('N6', 'M', 'north-e', 0.69, { sensorSet: 'poor', platesPerRack: 1, inLeakLPerMin: 1.9, filterLoad: 1.6 }),
  unit('N7', 'bench', 'north-f', 0.9, { inLeakLPerMin: 0.3, branchMeter: 'electromagneticFlow' }),
  unit('N8', 'M', 'north-g', 0.8, { loop: 'north-pair', sensorSet: 'rich', inLeakLPerMin: 2.0 }),
  unit('N9', 'M', 'north-h', 0.74, { loop: 'north-pair', sensorSet: 'rich', inLeakLPerMin: 2.4 }),
  unit('S1', 'H', 'south-a', 0.76, { sensorSet: 'rich', inLeakLPerMin: 3.4 }),
  unit('S2', 'H', 'south-b', 0.7, { inLeakLPerMin: 4.2, exchangerShare: 0.95, filterLoad: 1.2 }),
  unit('S3', 'H', 'south-c', 0.8, { inLeakLPerMin: 2.5, platesPerRack: 1 }),
  unit('S4', 'H', 'south-d', 0.64, { exhaustMeter: false, inLeakLPerMin: 0.6 }),
  unit('S5', 'H', 'south-e', 0.73, { inLeakLPerMin: 3.0, filterLoad: 1.4 }),
  unit('S6', 'M', 'south-f', 0.77, { shape: 'b', inLeakLPerMin: 2.0 }),
  unit('S7', 'M', 'south-g', 0.72, { shape: 'c', inLeakLPerMin: 2.6 }),
];

export const halls: readonly HallId[] = ['north', 'south'];
