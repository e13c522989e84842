import { measuredOfHall, measuredOfUnit } from '@ebbline/shared/contract/measured-points';
import { pointDefinition, type PointDefinition } from '@ebbline/shared/contract/point-table';
import { handPoints } from '@ebbline/shared/contract/water-parameters';
import { conceptOf } from './name-words';
import { wordsOf } from './words-of-name';

/** A point that a gateway could send, and what its name has to speak of. */
export interface NamedPattern {
  readonly pattern: string;
  readonly definition: PointDefinition;
  /** Concepts that tell it from others. */
  readonly wanted: ReadonlySet<string>;
}

/** Words of ids that tell nothing apart; people leave them out. */
const silent = new Set(['id', 'water', 'control', 'point', 'up', 'volume', 'loop', 'unit']);
/** What they do say, where they say it. */
const mayBeSaid: Readonly<Record<string, readonly string[]>> = {
  'loop.flow': ['loop', 'supply', 'return'],
  'unit.power': ['unit'],
  'supply.setPoint': ['temperature'],
  'supplyTank.setPoint': ['pressure'],
  'separator.setPoint': ['pressure'],
  'filter.pressureDrop': ['pressure'],
  'topUp.volume': ['filling'],
  'water.found': ['tray'],
  'hall.humidity': ['ambient'],
  'ambient.pressure': ['hall'],
};

const wantedOf = (pattern: string): ReadonlySet<string> => {
  const words = wordsOf(pattern.replace(/setPoint/, 'setpoint').replaceAll('<id>', ''));
  const concepts = words.filter((word) => !silent.has(word)).map((word) => conceptOf(word) ?? word);
  const wanted = new Set(concepts);
  // A drop of pressure is said by its drop.
  if (wanted.has('drop')) wanted.delete('pressure');
  if (wanted.size === 0) wanted.add(words[0] ?? pattern);
  if (pattern === 'unit.power') return new Set(['power', 'unit']);
  return wanted;
};

const byHandOnly = new Set(handPoints.map(([id]) => id));

/** Every point that can be measured, in the order of the point table. */
export const namedPatterns: readonly NamedPattern[] = [...measuredOfUnit, ...measuredOfHall].flatMap(([pattern]) => {
  const definition = pointDefinition(pattern);
  return definition === undefined || byHandOnly.has(pattern)
    ? []
    : [{ pattern, definition, wanted: wantedOf(pattern) }];
});

/** Whether a name may speak of this for the point, and be called by it no less. */
export const mayBeSaidOf = (pattern: string, concept: string): boolean =>
  mayBeSaid[pattern]?.includes(concept) === true ||
  concept === 'loop' ||
  concept === 'unit' ||
  // A vacuum source is mostly called a pump.
  (concept === 'pump' && pattern.startsWith('vacuum.'));
