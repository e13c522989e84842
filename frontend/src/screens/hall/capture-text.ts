import type { Figure } from '@ebbline/shared/contract/live-feed';
import { formatQuantity, inWords } from '../../text/format-quantity';

/** Heat removed as a share of chip power; null where either is missing or there is no power to compare with. */
export function captureText(heat: Figure, power: Figure): string | null {
  if (heat.value === null || power.value === null || power.value <= 0) return null;
  return inWords(formatQuantity(heat.value / power.value, 'ratio'));
}
