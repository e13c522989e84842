import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import { hallTrailsSchema } from '@ebbline/shared/contract/hall-trails';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

export const readHallTrails = (hall: string): Promise<Result<HallTrails>> =>
  request(`/api/halls/${encodeURIComponent(hall)}/trails`, hallTrailsSchema);
