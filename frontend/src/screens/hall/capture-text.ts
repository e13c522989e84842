import { isPlausibleCapture } from '@ebbline/shared/heat/capture';
import type { Figure, LoopLine } from '@ebbline/shared/contract/live-feed';
import { formatQuantity, inWords } from '../../text/format-quantity';

type Heat = Pick<LoopLine, 'heatRemoved' | 'chipPower'>;
const isKnown = (figure: Figure): boolean => figure.value !== null && figure.quality !== 'bad';

/**
 * Heat removed as a share of chip power, over the loops that have both: a loop whose chip power is not known would
 * raise the share though it takes off no more. Says in how many, where these are not the loops whose heat, or whose chip
 * power, is known; and where the share is none that meters can be right about; null where there is none.
 */
export function captureText(loops: readonly Heat[]): string | null {
  const both = loops.filter(({ heatRemoved, chipPower }) => isKnown(heatRemoved) && isKnown(chipPower));
  const heat = both.reduce((sum, { heatRemoved }) => sum + (heatRemoved.value ?? 0), 0);
  const power = both.reduce((sum, { chipPower }) => sum + (chipPower.value ?? 0), 0);
  if (power <= 0) return null;
  if (!isPlausibleCapture(heat / power)) return 'share can’t be told: heat and power contradict each other';
  const share = inWords(formatQuantity(heat / power, 'ratio'));
  const counted = loops.filter(({ heatRemoved, chipPower }) => isKnown(heatRemoved) || isKnown(chipPower)).length;
  return both.length === counted ? share : `${share} in ${both.length} of ${loops.length} units`;
}
