import type { GuidedKind } from '@ebbline/shared/contract/guided-test';
import type { GuidedTestKind } from './guided-test';
import { changeOver } from './kinds/change-over';
import { cutLine } from './kinds/cut-line';
import { heatBalance } from './kinds/heat-balance';
import { loadTest } from './kinds/load-test';
import { plateResistance } from './kinds/plate-resistance';
import { pumpChangeOver } from './kinds/pump-change-over';
import { zeroCheck } from './kinds/zero-check';

/** Every guided test: one file each. */
export const guidedTable: Readonly<Record<GuidedKind, GuidedTestKind>> = {
  zeroCheck,
  heatBalance,
  changeOver,
  pumpChangeOver,
  loadTest,
  plateResistance,
  cutLine,
};
