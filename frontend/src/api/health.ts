import { healthSchema } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import { ok } from '@ebbline/shared/errors/result';
import { request } from './request';

/** Which version of the program runs. */
export async function readVersion(): Promise<Result<string>> {
  const reply = await request('/api/health', healthSchema);
  return reply.ok ? ok(reply.value.version) : reply;
}
