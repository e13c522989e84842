import type { Site } from '@ebbline/shared/contract/http-api';
import { pointDefinition, splitPoint } from '@ebbline/shared/contract/point-table';
import { pointTitle } from './point-title';
import { siteFigureWords } from './site-figure-words';

type SiteUnit = Site['units'][number];

const withCapital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * What a part of an uncertainty budget comes from, in words: a point, several for what they have in common, a figure of the site
 * file, a model, or `unit:point` in a sum over units. @param of the point that the budget is of
 */
export function budgetTitle(
  from: string,
  of: string,
  siteUnit: SiteUnit | undefined,
  units: readonly SiteUnit[],
): string {
  const [first = '', second] = from.split(':');
  if (second !== undefined) {
    const unit = units.find(({ id }) => id === first);
    return `${unit?.name ?? first}, ${pointTitle(second, unit).toLowerCase()}`;
  }
  const whole = siteFigureWords(from);
  if (whole !== null) return whole;
  const named = from.replaceAll('<id>', splitPoint(of)?.id ?? '<id>');
  return withCapital(
    named.replaceAll(/[\w-]+(?:\.[\w-]+)*/g, (word) =>
      pointDefinition(word) === undefined ? (siteFigureWords(word) ?? word) : pointTitle(word, siteUnit),
    ),
  );
}
