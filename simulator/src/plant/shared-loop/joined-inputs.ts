import type { PlantInputs } from '../plant-inputs';

/** The racks of all units in one row, as the loop has them; the surroundings are those of the first. */
export function joinedInputs(units: readonly PlantInputs[]): PlantInputs {
  const [first] = units;
  if (!first) throw new RangeError('a loop needs a unit');
  const all = <Value>(of: (unit: PlantInputs) => readonly Value[]): Value[] => units.flatMap((unit) => [...of(unit)]);
  return {
    ...first,
    loadShare: all(({ loadShare, orders }) => loadShare.map((share) => (orders.loadPermitted ? share : 0))),
    opening: all(({ opening }) => opening),
    condition: {
      ...first.condition,
      rackResistance: all(({ condition }) => condition.rackResistance),
      plateFlowShare: all(({ condition }) => condition.plateFlowShare),
      pasteShare: all(({ condition }) => condition.pasteShare),
      mainCutBoreM: all(({ condition }) => condition.mainCutBoreM.map(() => 0)),
    },
    orders: {
      ...first.orders,
      loadPermitted: true,
      isolated: all(({ orders }) => orders.isolated),
      openedHose: all(({ orders }) => orders.openedHose),
    },
  };
}
