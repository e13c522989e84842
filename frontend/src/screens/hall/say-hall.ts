import type { HallPicture } from '@ebbline/shared/contract/live-feed';
import { sayHeldAside } from '../../text/say-held-aside';
import type { Need } from './need-of';
import { needOf } from './need-of';
import { isRunning, sayModes } from './say-modes';

/** A hall in one sentence. */
export interface HallWord {
  /** True where units run, every gap is known and fresh, nobody is needed and nothing that holds is set aside. */
  readonly calm: boolean;
  readonly text: string;
  /** Units and alarms of no unit that need a person. */
  readonly needs: number;
  /** Alarms here that are set aside while their condition holds. */
  readonly aside: number;
  /** Age of the oldest margin that it rests on, seconds; null where it rests on none. */
  readonly age: number | null;
}

const units = (count: number): string => (count === 1 ? '1 unit' : `${count} units`);

/** @param beside alarms of no unit, such as of the hall or of a gateway, that stand */
export function sayHall(frame: Pick<HallPicture, 'loops' | 'besideSetAside'>, beside: number): HallWord {
  const { loops } = frame;
  const count: Record<Need, number> = { person: 0, margin: 0, unknown: 0, aside: 0, work: 0, calm: 0 };
  for (const line of loops) count[needOf(line)] += 1;
  const aside = loops.reduce((sum, line) => sum + (line.setAsideHolding ?? 0), frame.besideSetAside ?? 0);
  const ages = loops.flatMap(({ pressureWindow: { vacuumMargin } }) => vacuumMargin.age ?? []);
  const age = ages.length === 0 ? null : Math.max(...ages);
  // An alarm says more than a mode, and its line says both.
  const unusual = sayModes(loops.filter((line) => needOf(line) !== 'person'));
  if (loops.length > 0 && count.person + count.margin + count.unknown + aside + beside === 0)
    return { ...sayUndisturbed(loops), needs: 0, aside, age };
  const parts = [
    count.person === 0
      ? ''
      : `${units(count.person)} of ${loops.length} ${count.person === 1 ? 'needs' : 'need'} a person`,
    beside === 0 ? '' : beside === 1 ? '1 alarm of no single unit stands' : `${beside} alarms of no single unit stand`,
    count.margin === 0 ? '' : `${units(count.margin)} may lie below a guard`,
    count.unknown === 0 ? '' : `${units(count.unknown)} without a fresh margin`,
    aside === 0 ? '' : sayHeldAside(aside),
  ].filter((part) => part !== '');
  return {
    calm: false,
    text: `${parts.join(', ') || 'No unit is known here'}${unusual}.`,
    needs: count.person + beside,
    aside,
    age,
  };
}

/** Where nothing stands and no gap is in doubt: calm by the units that run, if any is known to. */
function sayUndisturbed(loops: HallPicture['loops']): Pick<HallWord, 'calm' | 'text'> {
  const kept = loops.filter(isRunning).length;
  const unusual = sayModes(loops);
  if (kept === 0) {
    const none = loops.every(({ modeKnown }) => modeKnown) ? 'No unit is running here' : 'No unit is known to run here';
    return { calm: false, text: `${none}${unusual}.` };
  }
  const subject =
    kept === 1
      ? `${loops.length === 1 ? 'its one' : '1'} unit keeps its`
      : `${kept === loops.length ? 'all ' : ''}${units(kept)} keep their`;
  return { calm: true, text: `This hall is calm: ${subject} margins and nobody is needed${unusual}.` };
}
