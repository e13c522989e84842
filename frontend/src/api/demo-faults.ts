import type { DemoCommand, DemoState } from '@ebbline/shared/contract/demo-faults';
import { demoStateSchema } from '@ebbline/shared/contract/demo-faults';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** What the simulator of the demo site can be told, and what it says is going on. */
export const readDemo = (): Promise<Result<DemoState>> => request('/api/demo/faults', demoStateSchema);

export const commandDemo = (command: DemoCommand): Promise<Result<DemoState>> =>
  request('/api/demo/faults', demoStateSchema, { body: command });
