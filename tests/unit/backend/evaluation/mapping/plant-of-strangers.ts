import type { HeardPlace } from '../../../../../backend/src/evaluation/mapping/heard-place';
import { mappedSite, type MappedSite } from '../../../../../backend/src/evaluation/mapping/mapped-site';
import { compiledOrThrow, smallSiteDocument } from '../../../../helpers/small-site';

/** The small site with two units more that have no point yet: `m3` and `m4`, each with racks r1 and r2 and chip p1. */
export function siteWithNewUnits(): MappedSite {
  const document = smallSiteDocument() as { units: Record<string, object> };
  for (const id of ['m3', 'm4'])
    document.units[id] = { name: `Unit ${id.slice(1)}`, hall: 'north', template: 'typeM', points: {} };
  return mappedSite(compiledOrThrow(document));
}

export const noSeries = new Float64Array(0);

/** A place that was heard often, of numbers between two ends. */
export const heard = (topic: string, path: readonly string[], least: number, most = least): HeardPlace => ({
  ...{ topic, path, least, most, count: 60, form: 'number', words: [], latest: String(most) },
  ...{ unitBeside: null, series: noSeries, time: null },
});

export const heardWords = (topic: string, path: readonly string[], words: readonly string[]): HeardPlace => ({
  ...heard(topic, path, Number.NaN),
  ...{ form: 'word', words, latest: words[0] ?? '' },
});
