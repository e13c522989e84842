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
  readonly must: readonly Raised[];
  /** Entries that may follow in the time looked at; everything else must stay quiet. */
  readonly may: readonly string[];
  /** Why: a row of the reference on such plant, or common practice. */
  readonly because: string;
}

const sizes: readonly FaultSize[] = ['small', 'usual', 'large'];
const forSizes = (make: (size: FaultSize) => FaultCase): FaultCase[] => sizes.map(make);

const units = [
  { id: 'N3', gateway: 'north-b' },
  { id: 'S1', gateway: 'south-a' },
] as const;

/**
 * A step on top of S1's 76 % takes it beyond its rated heat: the return is hotter than designed and the pump's inlet
 * comes near boiling, as it must. AIR-1 on the largest step is a known fault, told in DEVELOPERS.md: vapour that the hot
 * water adds pushes air out of the separator, and the rise of the exhaust is taken for air that comes in.
 */
const overloadOfTypeH: Readonly<Record<FaultSize, readonly string[]>> = {
  small: [],
  usual: ['BOIL-1'],
  large: ['BOIL-1', 'AIR-1'],
};

/**
 * Every fault of the simulator in every size on a unit of type M and one of type H. `because` names the physics;
 * the seconds are the entry's own delay and what the signal needs to travel, common practice, no source.
 */
export const faultCases: readonly FaultCase[] = units.flatMap(({ id, gateway }) => [
  ...forSizes((size) => ({
    unit: id,
    command: { fault: 'cutServerHose', unit: id, branch: 'r3', size },
    must: [{ entry: 'AIR-1', withinS: 10, where: 'Rack 3' }],
    may: [],
    because:
      'air comes in at one rack and the vacuum source carries it: no margin, no supply temperature, no water moves',
  })),
  ...forSizes((size) => ({
    unit: id,
    command: { fault: 'facilityFlowLost', unit: id, size },
    must: [{ entry: 'TSUP-1', withinS: 60 }],
    // Hot return water takes the suction head of the pump after minutes; a pump that boils loses its flow.
    may: size === 'small' ? [] : ['BOIL-1', 'FLOW-2'],
    because: 'heat stays in the loop: supply temperature first; no air comes in, the margin to the room stays',
  })),
  ...forSizes((size) => ({
    unit: id,
    command: { fault: 'connectionLost', unit: id, size },
    must: [{ entry: 'COM-1', withinS: 10, where: gateway }],
    may: [],
    because: 'one lost gateway is one alarm, not one for each of its points',
  })),
  ...forSizes((size) => ({
    unit: id,
    command: { fault: 'slowInLeak', unit: id, size },
    must: [],
    may: [],
    because: 'it comes slower than a step, and moves neither pressure nor flow nor chips',
  })),
  ...(['rise', 'fall'] as const).flatMap((direction) =>
    forSizes((size) => ({
      unit: id,
      command: { fault: 'loadStep', unit: id, size, direction },
      must: [],
      may: direction === 'rise' && id === 'S1' ? overloadOfTypeH[size] : [],
      because: 'work comes and goes: heat follows the chips after the transit time, nothing is wrong',
    })),
  ),
]);
