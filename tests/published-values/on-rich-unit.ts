import { deriveHall } from '../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import type { SiteOptions } from '../helpers/compiled-site-builder';
import { buildRichUnitM } from '../helpers/rich-unit-m';

/** What a derived point is when unit M with every sensor runs with these measured values in place of its own. */
export function onRichUnit(point: string, values: Readonly<Record<string, number>>, change: SiteOptions = {}): number {
  const built = buildRichUnitM(change);
  for (const [id, value] of Object.entries(values)) built.set(id, value);
  deriveHall(built.site, built.state, 0, 0);
  deriveUnit(built.site, built.state, 0, 0, false);
  return built.value(point);
}
