import type { GuidedKind } from '@ebbline/shared/contract/guided-test';
import type { GuidedTestKind } from './guided-test';
import { zeroCheck } from './kinds/zero-check';

/** Every guided test: one file each. */
export const guidedTable: Readonly<Record<GuidedKind, GuidedTestKind>> = { zeroCheck };
