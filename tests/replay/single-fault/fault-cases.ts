import type { ScenarioKind } from '../../../simulator/src/scenario/catalogue/scenario-kind';
import { plantKinds } from '../../../simulator/src/scenario/catalogue/plant-fault-kinds';
import { shapeKinds } from '../../../simulator/src/scenario/catalogue/shape-fault-kinds';
import { demoFleet } from '../../../simulator/src/scenario/demo-fleet';
import { types, type Expectation, type TypeId } from './fault-expectation';

export interface SingleFault {
  readonly type: TypeId;
  readonly fault: string;
  readonly size: string;
  readonly way: string | null;
  readonly command: Readonly<Record<string, string>>;
}

const typeIds = Object.keys(types) as TypeId[];
/** The rack that is struck: the bench has but one. */
const branchOf = (type: TypeId): string => (type === 'bench' ? 'r1' : 'r3');

/** Every fault that the simulator can start in a unit of these types, in every size and way. */
export const singleFaults: readonly SingleFault[] = [...plantKinds(demoFleet), ...shapeKinds(demoFleet)].flatMap(
  (kind) => typeIds.filter((type) => kind.units.includes(types[type])).flatMap((type) => casesOf(kind, type)),
);

function casesOf(kind: ScenarioKind, type: TypeId): SingleFault[] {
  const sizes = kind.choices.find(({ key }) => key === 'size')?.values ?? [];
  // An opening by its air in place of its bore is no other fault.
  const ways = kind.choices.find(({ key, anyNumber }) => key !== 'size' && key !== 'freeLPerMin' && !anyNumber);
  return sizes.flatMap((size) =>
    (ways?.values ?? [null]).map((way) => ({
      type,
      fault: kind.id,
      size,
      way,
      command: {
        fault: kind.id,
        unit: types[type],
        size,
        ...(kind.needsBranch ? { branch: branchOf(type) } : {}),
        ...(ways === undefined || way === null ? {} : { [ways.key]: way }),
      },
    })),
  );
}

export const casesOfRow = ({ fault, on, sizes, ways }: Expectation): SingleFault[] =>
  singleFaults.filter(
    (one) =>
      one.fault === fault &&
      (on === undefined || on.includes(one.type)) &&
      (sizes === undefined || sizes.some((size) => size === one.size)) &&
      (ways === undefined || ways.some((way) => way === one.way)),
  );
