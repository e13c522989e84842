import type { Operation, OperationKind } from './operation';
import { closeHose } from './close-hose';
import { drain } from './drain';
import { evacuate } from './evacuate';
import { fill } from './fill';
import { isolateBranch } from './isolate-branch';
import { openHose } from './open-hose';
import { purge } from './purge';
import { restoreBranch } from './restore-branch';
import { standby } from './standby';
import { start } from './start';
import { stop } from './stop';
import { tightnessTest } from './tightness-test';
import { topUp } from './top-up';
import { vent } from './vent';

export const operationTable: Readonly<Record<OperationKind, Operation>> = {
  start,
  stop,
  standby,
  tightnessTest,
  fill,
  purge,
  drain,
  topUp,
  vent,
  evacuate,
  isolateBranch,
  restoreBranch,
  openHose,
  closeHose,
};
