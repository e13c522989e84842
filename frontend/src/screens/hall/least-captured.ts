import type { LoopLine } from '@ebbline/shared/contract/live-feed';

export interface Captured {
  readonly unit: string;
  readonly name: string;
  /** Heat removed ÷ chip power. */
  readonly share: number;
}

/** Below this part of the hall's largest load a share says nothing: two small numbers are divided. Own rule. */
const smallLoad = 0.05;

/** The loop that takes off the least of its chip power, of those that have both and a load worth the name; null where none has. */
export function leastCaptured(
  loops: readonly Pick<LoopLine, 'unit' | 'name' | 'heatRemoved' | 'chipPower'>[],
): Captured | null {
  const largest = Math.max(0, ...loops.map(({ chipPower }) => chipPower.value ?? 0));
  let least: Captured | null = null;
  for (const { unit, name, heatRemoved: heat, chipPower: power } of loops) {
    if (heat.value === null || power.value === null || heat.quality === 'bad' || power.quality === 'bad') continue;
    if (power.value <= 0 || power.value < largest * smallLoad) continue;
    const share = heat.value / power.value;
    if (least === null || share < least.share) least = { unit, name, share };
  }
  return least;
}
