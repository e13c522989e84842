/** Points of one unit that move together, and which way (1 or −1). Common practice, no source. */
export const movingPairs: readonly (readonly [one: string, other: string, way: 1 | -1])[] = [
  ['return.temperature', 'supply.temperature', 1],
  ['facility.return.temperature', 'return.temperature', 1],
  ['branch.<id>.return.temperature', 'return.temperature', 1],
  ['server.<id>.return.temperature', 'branch.<id>.return.temperature', 1],
  ['loop.flow', 'pump.speed', 1],
  ['transfer.flow', 'loop.flow', 1],
  ['branch.<id>.flow', 'loop.flow', 1],
  ['filter.pressureDrop', 'loop.flow', 1],
  ['pump.power', 'pump.speed', 1],
  ['pump.discharge.pressure', 'pump.speed', 1],
  ['unit.power', 'pump.power', 1],
  ['vacuum.power', 'vacuum.speed', 1],
  ['vacuum.exhaustFlow', 'vacuum.speed', 1],
  ['return.pressure', 'separator.pressure', 1],
  ['pump.inlet.pressure', 'separator.pressure', 1],
  ['supply.pressure', 'supplyTank.pressure', 1],
  ['separator.level', 'supplyTank.level', -1],
  ['valve.position', 'valve.command', 1],
  ['supplyTank.vent.position', 'supplyTank.vent.command', 1],
  ['plate.<id>.temperature', 'plate.<id>.power', 1],
  ['server.<id>.power', 'branch.<id>.power', 1],
];

/** The points that one of a pattern moves with, and which way. */
export const movesWithPoint = (pattern: string): readonly (readonly [point: string, way: 1 | -1])[] =>
  movingPairs.flatMap(([one, other, way]) =>
    one === pattern ? [[other, way] as const] : other === pattern ? [[one, way] as const] : [],
  );
