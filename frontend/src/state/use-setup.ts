import type { Intake } from '@ebbline/shared/contract/http-api';
import type { LastPayload, Setup } from '@ebbline/shared/contract/setup';
import { readIntake, readLastPayload, readSetup } from '../api/setup';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

const everyMs = 3000;

/** How the telemetry of a unit fares. */
export const useSetup = (unit: () => string | null): Polled<Setup> => usePolled(readSetup, { of: unit, everyMs });

/** What came in altogether, and what was refused. */
export const useIntake = (): Polled<Intake> => usePolled(readIntake, { everyMs: 5000 });

/** The newest payload of a topic, looked up when asked. */
export const useLastPayload = (): OneAct<string, LastPayload> => useActing(readLastPayload);
