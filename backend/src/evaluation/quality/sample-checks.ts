import { jump } from './jump';
import { outOfRange } from './out-of-range';
import type { SampleView } from '../sample/sample-view';
import { senderFlag } from './sender-flag';
import { stuck } from './stuck';

/** Checks of a sample by itself; for late ones too. Every reason is kept: bits of `reasonBit`. */
export const ownReasons = (sample: SampleView): number => outOfRange(sample) | senderFlag(sample);

/** Checks against the sample before, likewise. */
export const courseReasons = (sample: SampleView): number => jump(sample) | stuck(sample);
