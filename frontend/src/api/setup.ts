import type { Intake } from '@ebbline/shared/contract/http-api';
import { intakeSchema } from '@ebbline/shared/contract/http-api';
import type { LastPayload, LimitLine, Setup } from '@ebbline/shared/contract/setup';
import { lastPayloadSchema, limitListSchema, setupSchema } from '@ebbline/shared/contract/setup';
import type { Result } from '@ebbline/shared/errors/result';
import { ok } from '@ebbline/shared/errors/result';
import { request } from './request';

/** The measured points of a unit and of its hall, and how their telemetry fares. */
export const readSetup = (unit: string): Promise<Result<Setup>> =>
  request(`/api/units/${encodeURIComponent(unit)}/setup`, setupSchema);

/** The limits that are drawn beside the points of a unit. */
export async function readLimits(unit: string): Promise<Result<readonly LimitLine[]>> {
  const reply = await request(`/api/units/${encodeURIComponent(unit)}/limits`, limitListSchema);
  return reply.ok ? ok(reply.value.limits) : reply;
}

export const readIntake = (): Promise<Result<Intake>> => request('/api/intake', intakeSchema);

/** The newest payload of a topic, as it came. */
export const readLastPayload = (topic: string): Promise<Result<LastPayload>> =>
  request(`/api/intake/last?${new URLSearchParams({ topic }).toString()}`, lastPayloadSchema);
