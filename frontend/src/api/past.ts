import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import { hallTrailsSchema } from '@ebbline/shared/contract/hall-trails';
import type { PastHall, PastMarks, PastUnit } from '@ebbline/shared/contract/past';
import { pastHallSchema, pastMarksSchema, pastUnitSchema } from '@ebbline/shared/contract/past';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** What may take long: history is read for every unit that is shown. ms */
const timeOutMs = 20_000;
/** An hour of every unit of a large hall. ms */
const hourTimeOutMs = 60_000;

export const readPastHall = (hall: string, at: string): Promise<Result<PastHall>> =>
  request(`/api/past/halls/${encodeURIComponent(hall)}?${of({ at })}`, pastHallSchema, { timeOutMs });

export const readPastTrails = (hall: string, at: string): Promise<Result<HallTrails>> =>
  request(`/api/past/halls/${encodeURIComponent(hall)}/trails?${of({ at })}`, hallTrailsSchema, {
    timeOutMs: hourTimeOutMs,
  });

export const readPastUnit = (unit: string, at: string): Promise<Result<PastUnit>> =>
  request(`/api/past/units/${encodeURIComponent(unit)}?${of({ at })}`, pastUnitSchema, { timeOutMs });

/** @param place a hall or a unit */
export const readPastMarks = (
  place: { readonly hall: string } | { readonly unit: string },
  from: string,
  to: string,
): Promise<Result<PastMarks>> =>
  request(`/api/past/marks?${of({ ...place, from, to })}`, pastMarksSchema, { timeOutMs });

const of = (query: Readonly<Record<string, string>>): string => new URLSearchParams(query).toString();
