import { coverageFactor } from '@ebbline/shared/uncertainty/combine';
import { slotOf, uOf, type GuidedView } from './guided-view';

/**
 * ± what a measured point may be off by its stated accuracy, in SI: the band of its maker (a = √3 u, GUM 4.3.7); where a
 * certificate states a normal part, the expanded uncertainty. NaN where nothing is stated.
 */
export function statedBand(view: GuidedView, point: string): number {
  const { slots } = view.pipeline.site;
  const slot = slotOf(view, point);
  const u = uOf(view, point);
  const normal = (slots.accuracyNormalAbsolute[slot] ?? 0) + (slots.accuracyNormalRelative[slot] ?? 0);
  return normal > 0 ? coverageFactor * u : Math.sqrt(3) * u;
}
