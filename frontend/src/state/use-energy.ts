import type { EnergyQuery, EnergyReport } from '@ebbline/shared/contract/energy';
import { fail } from '@ebbline/shared/errors/result';
import { readEnergy } from '../api/energy';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** The last period still runs: its sums are asked for anew so often. ms */
export const energyEveryMs = 30_000;

/** Energies of a hall or unit, by hour, day or month. @param query what is asked for; null while that is not known */
export const useEnergy = (query: () => EnergyQuery | null): Polled<EnergyReport> =>
  usePolled(
    () => {
      const wanted = query();
      if (wanted === null) return Promise.resolve(fail({ code: 'READING_NOT_SENT', message: 'nothing was asked for' }));
      return readEnergy(wanted);
    },
    {
      of: () => {
        const wanted = query();
        return wanted === null ? null : JSON.stringify(wanted);
      },
      everyMs: energyEveryMs,
    },
  );
