import type { CompiledSite, CompiledUnit, EntryLimits, Holder, SlotTable } from '../site/compiled-site';

type Move = (slot: number) => number;

/**
 * The site as if it had this unit alone, with its hall: small enough to be judged anew beside the running one. It receives
 * nothing, has no gateway, and its loop has no other unit.
 * @throws RangeError where the site has no such unit
 */
export const siteOfUnit = (site: CompiledSite, unitIndex: number): CompiledSite =>
  siteOf(site, [site.units[unitIndex]?.hall ?? -1], [unitIndex]);

/**
 * The site as if it had these halls and units alone, in this order.
 * @throws RangeError where the site has no such hall or unit
 */
export function siteOf(site: CompiledSite, halls: readonly number[], units: readonly number[]): CompiledSite {
  const hallsKept = halls.map((at) => there(site.halls[at], 'hall', at));
  const unitsKept = units.map((at) => there(site.units[at], 'unit', at));
  const holders = [...hallsKept, ...unitsKept].map(({ holder }) => there(site.holders[holder], 'holder', holder));
  const move: Move = (slot) => {
    let first = 0;
    for (const { firstSlot, slotCount } of holders) {
      if (slot >= firstSlot && slot < firstSlot + slotCount) return first + slot - firstSlot;
      first += slotCount;
    }
    return -1;
  };
  const loops = [...new Set(unitsKept.map(({ loop }) => loop))];
  const within = (is: (unit: CompiledUnit) => boolean): number[] =>
    unitsKept.flatMap((unit, i) => (is(unit) ? [i] : []));
  return {
    ...site,
    holders: holders.map((holder) => movedHolder(holder, move)),
    halls: hallsKept.map((hall, i) => ({
      ...hall,
      holder: i,
      units: within((unit) => unit.hall === halls[i]),
      slot: movedSlots(hall.slot, move),
    })),
    units: unitsKept.map((unit, i) => ({
      ...movedUnit(unit, move),
      hall: halls.indexOf(unit.hall),
      holder: hallsKept.length + i,
      loop: loops.indexOf(unit.loop),
    })),
    loops: loops.map((at) => {
      const loop = site.loops[at];
      const [first] = unitsKept.filter((unit) => unit.loop === at);
      const of = within((unit) => unit.loop === at);
      const id = loop?.id ?? first?.id ?? '';
      return {
        id,
        name: loop?.name ?? first?.name ?? id,
        units: of,
        unitsNeeded: Math.min(loop?.unitsNeeded ?? 1, of.length),
      };
    }),
    gateways: [],
    slots: cutSlots(site.slots, holders),
    topics: new Map(),
    subscriptions: [],
  };
}

function there<Part>(part: Part | undefined, kind: string, at: number): Part {
  if (part === undefined) throw new RangeError(`the site has no ${kind} ${at}`);
  return part;
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

const movedUnit = (unit: CompiledUnit, move: Move): CompiledUnit => ({
  ...unit,
  gateway: -1,
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
