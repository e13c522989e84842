import type { LoopLine } from '@ebbline/shared/contract/live-feed';
import { isOld } from '../../components/freshness';

/** How many units of the hall need a person, and of how many nothing is known at present. */
export function sayNeed(loops: readonly Pick<LoopLine, 'worst' | 'ventedNotProtected' | 'pressureWindow'>[]): string {
  const needing = loops.filter(({ worst }) => worst !== null).length;
  const unknown = loops.filter(
    (line) => line.worst === null && !line.ventedNotProtected && isOld(line.pressureWindow.vacuumMargin),
  ).length;
  const need = needing === 0 ? 'none needs a person' : needing === 1 ? '1 needs a person' : `${needing} need a person`;
  if (unknown === 0) return need;
  const rest = unknown === 1 ? '1 without a fresh margin' : `${unknown} without a fresh margin`;
  return needing === 0 ? rest : `${need}, ${rest}`;
}
