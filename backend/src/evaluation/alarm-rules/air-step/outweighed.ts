import type { CompiledSite } from '../../site/compiled-site';
import { airOfOneOpeningMs } from '../folding';
import type { AirMemory } from './air-memory';

/** Less than this of a sign may be gas of an opening elsewhere on the loop: an open line of one's own shows twice as much and more. */
const weakScore = 0.5;
/** So many times as strong a sign leaves no doubt whose line it is. Both are own rules. */
const clearLead = 3;

/**
 * The sign by which a unit names one of its branches is weak, and another unit of its loop that felt the step at the same time
 * names one by a far stronger sign: then it is that one.
 */
export function outweighed(air: AirMemory, { loops, units }: CompiledSite, unitIndex: number): boolean {
  const own = air.namedScore[unitIndex] as number;
  if (own >= weakScore) return false;
  for (const other of loops[units[unitIndex]?.loop ?? -1]?.units ?? []) {
    if (other === unitIndex || (air.namedBranch[other] as number) < 0) continue;
    const apartMs = Math.abs((air.stepMs[other] as number) - (air.stepMs[unitIndex] as number));
    if (apartMs <= airOfOneOpeningMs && (air.namedScore[other] as number) >= clearLead * own) return true;
  }
  return false;
}
