/** What is told beside the one alarm that matters, under no first-out, in the time that a fault is looked at. */
export interface ToldApart {
  readonly fault: string;
  readonly units: readonly string[];
  readonly size?: string;
  readonly entries: readonly string[];
  /** Why it is another thing to know or to do, and no consequence that the first alarm tells already. */
  readonly because: string;
}

/**
 * The measure: in a single fault the operator is told one alarm that matters, first, and the rest is folded under it. These are
 * not so; whatever else comes unfolded fails. `single-fault` asks the same of every fault, size and type of unit. Common practice, no source.
 */
export const toldApart: readonly ToldApart[] = [
  {
    fault: 'cutRackMain',
    units: ['N3'],
    entries: ['AIR-4', 'FLOW-2', 'MARGIN-2', 'WATER-1'],
    because:
      'the opening is told first; that the sources carry it no more, that all flow goes, that water is found and that the margin is gone each ask for something else, and water and margin never fold under air',
  },
  {
    fault: 'pumpTrip',
    units: ['N3', 'S4', 'N4', 'N6'],
    size: 'usual',
    entries: ['FLOW-2'],
    because: 'minutes pass between the stop of a transfer pump and the lost flow, which is the next step',
  },
];

export function toldApartOf(unit: string, command: Readonly<Record<string, unknown>>): readonly string[] {
  const row = toldApart.find(
    ({ fault, units, size }) =>
      fault === command['fault'] && units.includes(unit) && (size === undefined || size === command['size']),
  );
  return row?.entries ?? [];
}
