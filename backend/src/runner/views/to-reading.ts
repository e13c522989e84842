import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { Reading } from '@ebbline/shared/contract/reading';
import { qualityOf, reasonBit, reasonList } from '../../evaluation/slots/quality-reasons';
import { slotAgeS } from '../../evaluation/slots/slot-age';
import { readingUncertainty } from '../../evaluation/derive/reading-uncertainty';
import { Origin } from '../../evaluation/site/compiled-site';
import type { Pipeline } from '../../evaluation/pipeline/pipeline';
import { finiteOrNull, timeText } from './time-text';

/** The site and the newest value of each of its points. */
type Values = Pick<Pipeline, 'site' | 'state'>;

/** A column has an entry for every slot: the site compiled both. */
const at = (column: { readonly [i: number]: number }, slot: number): number => column[slot] ?? Number.NaN;

/** What is said of a point that a unit does not have. */
export const noFigure: Figure = {
  value: null,
  age: null,
  quality: 'bad',
  reasons: ['notReceived'],
  expandedUncertainty: null,
};

/**
 * What is out of range is told with its reason, as the code of a broken wire helps to find it; beyond this, in SI, it is no
 * reading of anything, and only the reason is told: own rule.
 */
const mostTold = 1e9;

/** A slot as a number for a picture; slot −1 is a point that the unit does not have. */
export function toFigure({ site, state }: Values, slot: number, nowMs: number): Figure {
  if (slot < 0) return noFigure;
  const reasons = state.reasons[slot] ?? 0;
  const value = at(state.value, slot);
  const told = (reasons & reasonBit.outOfRange) === 0 || Math.abs(value) <= mostTold;
  return {
    value: told ? finiteOrNull(value) : null,
    age: finiteOrNull(slotAgeS(state, slot, nowMs)),
    quality: qualityOf(reasons),
    reasons: reasonList(reasons),
    expandedUncertainty: told ? finiteOrNull(readingUncertainty(site, state, slot)) : null,
  };
}

/** A slot as a screen or an outside program receives it. */
export function toReading(values: Values, slot: number, nowMs: number): Reading {
  const { site, state } = values;
  const place = state.where[slot] ?? -1;
  return {
    id: site.slots.pointId[slot] ?? '',
    kind: site.slots.measured[slot] !== Origin.derived ? 'measured' : 'derived',
    ...toFigure(values, slot, nowMs),
    reasons: reasonList(state.reasons[slot] ?? 0),
    unit: site.slots.unitOfMeasure[slot] ?? '1',
    time: timeText(at(state.sourceMs, slot)),
    where: place < 0 ? null : (site.holders[site.slots.holder[slot] ?? -1]?.places[place] ?? null),
  };
}
