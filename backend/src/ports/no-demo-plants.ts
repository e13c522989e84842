import { fail, type Result } from '@ebbline/shared/errors/result';
import type { DemoFault, DemoPlants } from './demo-plants';

const absent: Result<never, DemoFault> = fail({
  code: 'DEMO_ABSENT',
  message: 'This is no demo site: its plants are real, and nothing can be told them from here.',
});

/** A real site has no simulated plants. */
export const noDemoPlants: DemoPlants = { state: () => absent, command: () => Promise.resolve(absent) };
