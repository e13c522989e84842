/** What could hurt someone who follows an alarm to the plant; by the family of its catalogue entry. */
const defer = 'Follow local codes, the maker’s instructions and licensed practice.';

const cautions: { readonly [family: string]: string } = {
  WATER: `Water near live equipment: keep hands and feet out of it until the circuits are proven dead. ${defer}`,
  MARGIN: `An opening may let water out near live equipment. Open nothing until the margin is back. ${defer}`,
  DEW: `Condensation near live equipment: treat wet surfaces as live until proven dead. ${defer}`,
  BOIL: `Hot water and hot surfaces. Open nothing under vacuum or while warm. ${defer}`,
  AIR: `Vacuum vessels and exhaust mist: keep clear of glass under vacuum and of the exhaust. ${defer}`,
  ISOL: `Hot water trapped under rising pressure: relieve it to the loop before anything is loosened. ${defer}`,
  PERMIT: `An open branch draws air; a second opening may not be carried. Look before anything is closed or opened. ${defer}`,
  CHEM: `Water treatment chemicals and biocides: wear what their data sheets ask for. ${defer}`,
};

/** Stands over every form that opens a permit. */
export const permitCaution = `A permit here is a note for the watch, not a permission to work: lock-out and work permits of the site come first. Drained hoses may hold hot water, and an open coupling draws air and what lies near it. ${defer}`;

/** Stands over the form that takes down what was found in the water. */
export const waterCaution = `Drawing a sample opens the loop: let no air in that the unit can’t carry, mind hot water and live equipment, and wear what the data sheets of the treatment chemicals and biocides ask for. ${defer}`;

/** What may hurt whoever stands at a unit, before a hand is laid on it. */
export const atUnitCautions: readonly string[] = [
  'Open nothing that the margin and the vacuum source do not carry, and nothing without the site’s own permit to work.',
  'Glass and vessels under vacuum can burst inward: eye protection on, no knock, no work on them.',
  'Water trapped between shut valves may come out hot and under pressure: relieve it to the loop first.',
  'Loop water may hold biocide and inhibitor, exhaust mist may carry germs: gloves and goggles on, and don’t breathe it.',
  'Lock out what could start by itself before hands are near. Water near live equipment: know the isolators.',
];

/** The caution that belongs to a catalogue entry such as `WATER-1`; null where none is needed. */
export function cautionFor(entry: string): string | null {
  return cautions[entry.split('-')[0] ?? ''] ?? null;
}
