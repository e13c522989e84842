import { deriveMemoryOf } from '../derive/memory/memory-of-state';
import { copyColumns } from './copy-columns';
import type { PipelineState } from './pipeline-state';
import type { SiteMaps } from './site-maps';

/** Value, times and reasons of every slot that is the same, and what derived points remember of each unit; the place that decides a value is found again by its name. */
export function takeOverSlots(before: PipelineState, now: PipelineState, { slots, units }: SiteMaps): void {
  copyColumns(before.state, now.state, slots);
  copyColumns(deriveMemoryOf(before.site, before.state), deriveMemoryOf(now.site, now.state), units);
  const { where } = now.state;
  for (let slot = 0; slot < where.length; slot += 1) {
    const was = slots.before[slot] as number;
    if (was < 0 || (where[slot] as number) < 0) continue;
    const name = placesOf(before, was)[where[slot] as number];
    where[slot] = name === undefined ? -1 : placesOf(now, slot).indexOf(name);
  }
}

const placesOf = ({ site }: PipelineState, slot: number): readonly string[] =>
  site.holders[site.slots.holder[slot] as number]?.places ?? [];
