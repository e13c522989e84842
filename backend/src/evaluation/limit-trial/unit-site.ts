import type { CompiledHall, CompiledSite, CompiledUnit, EntryLimits, Holder, SlotTable } from '../site/compiled-site';

type Move = (slot: number) => number;

/**
 * The site as if it had this unit alone, with its hall: small enough to be judged anew beside the running one. It receives
 * nothing, has no gateway, and its loop has no other unit.
 * @throws RangeError where the site has no such unit
 */
export function siteOfUnit(site: CompiledSite, unitIndex: number): CompiledSite {
  const unit = site.units[unitIndex];
  const hall = site.halls[unit?.hall ?? -1];
  const ofHall = site.holders[hall?.holder ?? -1];
  const ofUnit = site.holders[unit?.holder ?? -1];
  if (unit === undefined || hall === undefined || ofHall === undefined || ofUnit === undefined)
    throw new RangeError(`the site has no unit ${unitIndex}`);
  const holders = [ofHall, ofUnit];
  const move: Move = (slot) => {
    let first = 0;
    for (const { firstSlot, slotCount } of holders) {
      if (slot >= firstSlot && slot < firstSlot + slotCount) return first + slot - firstSlot;
      first += slotCount;
    }
    return -1;
  };
  const loop = site.loops[unit.loop];
  return {
    ...site,
    holders: holders.map((holder) => movedHolder(holder, move)),
    halls: [movedHall(hall, move)],
    units: [movedUnit(unit, move)],
    loops: [{ id: loop?.id ?? unit.id, name: loop?.name ?? unit.name, units: [0], unitsNeeded: 1 }],
    gateways: [],
    slots: cutSlots(site.slots, holders),
    topics: new Map(),
    subscriptions: [],
  };
}

/** The same site with another setting of one entry. */
export function withLimits(site: CompiledSite, entry: string, limits: EntryLimits): CompiledSite {
  const units = site.units.map((unit) => ({ ...unit, limits: new Map([...unit.limits, [entry, limits]]) }));
  return { ...site, units };
}

const movedHolder = (holder: Holder, move: Move): Holder => ({
  ...holder,
  firstSlot: move(holder.firstSlot),
  slotOf: new Map([...holder.slotOf].map(([point, slot]) => [point, move(slot)])),
});

const movedHall = (hall: CompiledHall, move: Move): CompiledHall => ({
  ...hall,
  holder: 0,
  units: [0],
  slot: movedSlots(hall.slot, move),
});

const movedUnit = (unit: CompiledUnit, move: Move): CompiledUnit => ({
  ...unit,
  hall: 0,
  holder: 1,
  gateway: -1,
  loop: 0,
  branches: unit.branches.map((one) => ({ ...one, slot: movedSlots(one.slot, move) })),
  servers: unit.servers.map((one) => ({ ...one, slot: movedSlots(one.slot, move) })),
  plates: unit.plates.map((one) => ({ ...one, slot: movedSlots(one.slot, move) })),
  tanks: unit.tanks.map((one) => ({ ...one, slot: movedSlots(one.slot, move) })),
  matchedPairs: unit.matchedPairs.map((pair) => ({ ...pair, slot: move(pair.slot), mate: move(pair.mate) })),
  water: {
    ...unit.water,
    parameters: unit.water.parameters.map((one) => ({
      ...one,
      sensorSlot: move(one.sensorSlot),
      handSlot: move(one.handSlot),
    })),
  },
});

const movedSlots = <Slots extends Readonly<Record<string, number>>>(slots: Slots, move: Move): Slots =>
  Object.fromEntries(Object.entries(slots).map(([name, slot]) => [name, move(slot)])) as Slots;

function cutSlots(slots: SlotTable, holders: readonly Holder[]): SlotTable {
  const places = holders.flatMap(({ firstSlot, slotCount }) =>
    Array.from({ length: slotCount }, (_, i) => firstSlot + i),
  );
  const numbers = (column: Float64Array): Float64Array =>
    Float64Array.from(places, (slot) => column[slot] ?? Number.NaN);
  const bytes = (column: Uint8Array): Uint8Array => Uint8Array.from(places, (slot) => column[slot] ?? 0);
  const texts = (column: readonly string[]): readonly string[] => places.map((slot) => column[slot] ?? '');
  return {
    count: places.length,
    pointId: texts(slots.pointId),
    unitOfMeasure: texts(slots.unitOfMeasure),
    holder: Int32Array.from(holders.flatMap(({ slotCount }, at) => Array.from({ length: slotCount }, () => at))),
    measured: bytes(slots.measured),
    reference: bytes(slots.reference),
    factor: numbers(slots.factor),
    offset: numbers(slots.offset),
    minimum: numbers(slots.minimum),
    maximum: numbers(slots.maximum),
    jumpPerS: numbers(slots.jumpPerS),
    periodMs: numbers(slots.periodMs),
    stuckMs: numbers(slots.stuckMs),
    accuracyAbsolute: numbers(slots.accuracyAbsolute),
    accuracyRelative: numbers(slots.accuracyRelative),
    accuracyNormalAbsolute: numbers(slots.accuracyNormalAbsolute),
    accuracyNormalRelative: numbers(slots.accuracyNormalRelative),
  };
}
