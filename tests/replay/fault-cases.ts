import type { FaultSize } from '../../simulator/src/faults/fault';

/** What a fault must raise, in order of first appearance, and within how long after it began. */
export interface Raised {
  readonly entry: string;
  readonly withinS: number;
  readonly where?: string;
}

export interface FaultCase {
  readonly unit: string;
  readonly command: Readonly<Record<string, unknown>>;
  /** So long the fault is looked at, s: until what it does has been seen. */
  readonly lastsS: number;
  readonly must: readonly Raised[];
  /** Entries that may follow in the time looked at; everything else must stay quiet. */
  readonly may: readonly string[];
  /** Why: a row of the reference on such plant, or common practice. */
  readonly because: string;
}

const sizes: readonly FaultSize[] = ['small', 'usual', 'large'];
const forSizes = (make: (size: FaultSize) => FaultCase): FaultCase[] => sizes.map(make);

const units = [
  { id: 'N3', type: 'M', gateway: 'north-b', branch: 'r3', rack: 'Rack 3' },
  { id: 'S1', type: 'H', gateway: 'south-a', branch: 'r3', rack: 'Rack 3' },
  { id: 'N7', type: 'bench', gateway: 'north-f', branch: 'r1', rack: 'Rack 1' },
] as const;

/**
 * A rise of 40 or 60 % on top of S1's 79 % is 119 or 139 % of the rated heat of type H. By hand: the return stands at
 * 35 + 12 × 1.19 = 49.3 °C, where the vapour pressure is 11.9 kPa (IAPWS SR1-86, from memory); the pump's inlet has
 * (32 − 11.9) / 9.7 + 0.45 − 0.25 = 2.27 m, its limit is 2.1 m, and BOIL-1 speaks up to 0.1 m (1 kPa) and U (near 1 kPa) above that.
 * So the nearness is real: type H has this wall at 113 % (48.6 °C), and the supply's overshoot of 0.8 K brings it
 * nearer. A rise of 20 % (99 %) has 2.41 m. At 139 % the return stands at 51.7 °C and with the overshoot at 52.5 °C, where
 * the vapour pressure is 14.0 kPa: 2.06 m, the wall is crossed (BOIL-2). Vapour takes of what the source carries too: by hand
 * its capacity falls by (32 − 14.0) / (32 − 9.6) = 0.80, so that the reserve comes below one open hose (AIR-3).
 */
const nearThePumpInlet = (type: string, size: FaultSize, direction: string): readonly string[] =>
  type !== 'H' || direction !== 'rise' || size === 'small'
    ? []
    : size === 'usual'
      ? ['BOIL-1']
      : ['BOIL-1', 'BOIL-2', 'AIR-3'];

/**
 * Every fault of the simulator in every size on a unit of each type. `because` names the physics;
 * the seconds are the entry's own delay and what the signal needs to travel, common practice, no source.
 */
export const faultCases: readonly FaultCase[] = units.flatMap(({ id, type, gateway, branch, rack }) => [
  ...(['good', 'stuckOpen'] as const).flatMap((checkValve) =>
    forSizes((size) => ({
      unit: id,
      command: { fault: 'cutServerHose', unit: id, branch, size, checkValve },
      lastsS: 60,
      // 5 s to be seen, and the entry's delay of 2 s.
      must: [{ entry: 'AIR-1', withinS: 7, where: rack }],
      // The bench has one plate: when its hose is open, hardly any water flows at all. A hose torn off at its full bore is
      // more than one source carries: until the standby has run up the separator rises.
      may: [...(type === 'bench' ? ['FLOW-2'] : []), ...(size === 'large' ? ['AIR-4'] : [])],
      because:
        'air comes in at one rack and the vacuum source carries it: no margin, no supply temperature, no water moves',
    })),
  ),
  ...forSizes((size) => ({
    unit: id,
    command: { fault: 'facilityFlowLost', unit: id, size },
    lastsS: 300,
    // 40 % of the usual flow is told against the mean of ten quiet minutes; this recording has one minute before the fault.
    must: [...(size === 'small' ? [] : [{ entry: 'FAC-1', withinS: 15 }]), { entry: 'TSUP-1', withinS: 60 }],
    // Hot return water takes the suction head of the pump after minutes; a pump that boils loses its flow.
    may:
      size === 'small'
        ? ['TSUP-2', 'BOIL-1', 'BOIL-2']
        : ['TSUP-2', 'BOIL-1', 'BOIL-2', 'FLOW-1', 'FLOW-2', 'AIR-3', 'TANK-1', 'TANK-3'],
    because:
      'the facility’s own flow tells first, then heat that stays in the loop; no air comes in, the margin to the room stays',
  })),
  ...forSizes((size) => ({
    unit: id,
    command: { fault: 'connectionLost', unit: id, size },
    lastsS: 90,
    must: [{ entry: 'COM-1', withinS: 10, where: gateway }],
    may: [],
    because: 'one lost gateway is one alarm, not one for each of its points',
  })),
  ...forSizes((size) => ({
    unit: id,
    command: { fault: 'slowInLeak', unit: id, size },
    lastsS: 200,
    must: [],
    may: [],
    because: 'it comes slower than a step, and moves neither pressure nor flow nor chips',
  })),
  ...(['rise', 'fall'] as const).flatMap((direction) =>
    forSizes((size) => ({
      unit: id,
      command: { fault: 'loadStep', unit: id, size, direction },
      lastsS: 200,
      must: [],
      may: nearThePumpInlet(type, size, direction),
      because: 'work comes and goes: heat follows the chips after the transit time, and no air comes in',
    })),
  ),
]);
