/** In which units of measure a person reads: SI as it is kept, or those of the trade in the United States. */
export const unitSystems = ['metric', 'us'] as const;
export type UnitSystem = (typeof unitSystems)[number];

let read: () => UnitSystem = () => 'metric';

/** Who keeps the choice says here how it is read; what is written on a screen follows it. */
export function readUnitSystemBy(reader: () => UnitSystem): void {
  read = reader;
}

export const unitSystem = (): UnitSystem => read();
