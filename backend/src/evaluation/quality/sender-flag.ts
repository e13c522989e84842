import { reasonBit } from '../slots/quality-reasons';
import type { SampleView } from '../sample/sample-view';

/** The sender itself says that the sample is not good (or leaves out the quality that the site file promises). */
export const senderFlag = ({ flagged }: SampleView): number => (flagged ? reasonBit.senderFlag : 0);
