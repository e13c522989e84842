import type { DemoCommand, DemoState } from '@ebbline/shared/contract/demo-faults';
import { commandDemo, readDemo } from '../api/demo-faults';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** What the simulator of the demo site says is going on. */
export const useDemoState = (): Polled<DemoState> => usePolled(readDemo, { everyMs: 2000 });

/** Tells the simulator something. That it was sent is not that it was done: the next state says that. */
export const useDemoCommand = (): OneAct<DemoCommand, DemoState> => useActing(commandDemo);
