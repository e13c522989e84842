import { jump } from './jump';
import { outOfRange } from './out-of-range';
import type { SampleView } from '../sample/sample-view';
import { senderFlag } from './sender-flag';
import { stuck } from './stuck';

type SampleCheck = (sample: SampleView) => number;

/** Checks of a sample by itself; for late ones too. */
export const ownChecks: readonly SampleCheck[] = [outOfRange, senderFlag];

/** Checks against the sample before. */
export const courseChecks: readonly SampleCheck[] = [jump, stuck];

/** Every reason is kept: bits of `reasonBit`. */
export function runChecks(checks: readonly SampleCheck[], sample: SampleView): number {
  let reasons = 0;
  for (let i = 0; i < checks.length; i += 1) reasons |= checks[i]?.(sample) ?? 0;
  return reasons;
}
