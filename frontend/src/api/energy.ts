import type { EnergyQuery, EnergyReport } from '@ebbline/shared/contract/energy';
import { energyReportSchema } from '@ebbline/shared/contract/energy';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** A month of a hall is read from much history. ms */
const energyTimeOutMs = 30_000;

export function readEnergy(query: EnergyQuery): Promise<Result<EnergyReport>> {
  const wanted = new URLSearchParams(
    Object.entries(query).filter((entry): entry is [string, string] => entry[1] !== ''),
  );
  return request(`/api/energy?${wanted.toString()}`, energyReportSchema, { timeOutMs: energyTimeOutMs });
}
