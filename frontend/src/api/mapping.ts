import type { Mapping, TriedLines } from '@ebbline/shared/contract/mapping';
import { mappingSchema, triedLinesSchema } from '@ebbline/shared/contract/mapping';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** A large site takes a while to be compiled. ms */
const tryTimeOutMs = 30_000;

/** What was heard and which points it could be. @param unit empty: of any unit */
export const readMapping = (unit: string): Promise<Result<Mapping>> =>
  request(`/api/mapping${unit === '' ? '' : `?${new URLSearchParams({ unit }).toString()}`}`, mappingSchema);

export const listenFor = (filter: string): Promise<Result<Mapping>> =>
  request('/api/mapping/listen', mappingSchema, { body: { filter } });

export const stopListening = (): Promise<Result<Mapping>> => request('/api/mapping/stop', mappingSchema, { body: {} });

/** What would be said of the site file with these lines; nothing comes into force by it. */
export const tryLines = (lines: string): Promise<Result<TriedLines>> =>
  request('/api/mapping/try', triedLinesSchema, { body: { lines }, timeOutMs: tryTimeOutMs });
