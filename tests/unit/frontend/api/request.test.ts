import { z } from 'zod';
import { describe, expect, it } from 'vitest';
import { request } from '../../../../frontend/src/api/request';

const shape = z.object({ answer: z.number() });
const answering =
  (status: number, body: string): typeof fetch =>
  () =>
    Promise.resolve(new Response(body, { status, headers: { 'content-type': 'application/json' } }));

describe('a request to the server', () => {
  it('gives what the contract holds', async () => {
    expect(await request('/api/x', shape, { fetch: answering(200, '{"answer":42}') })).toEqual({
      ok: true,
      value: { answer: 42 },
    });
  });

  it('shows nothing of a reply that the contract does not hold', async () => {
    const reply = await request('/api/x', shape, { fetch: answering(200, '{"answer":"42"}') });
    expect(reply).toMatchObject({ ok: false, fault: { code: 'REPLY_MALFORMED' } });
  });

  it('hands on the server’s own words of a refusal', async () => {
    const problem = {
      type: 'urn:x',
      title: 'Conflict',
      status: 409,
      detail: 'A. Berg was first, at 12:00:00.',
      instance: '/api/x',
      code: 'TAKEN',
    };
    const reply = await request('/api/x', shape, { fetch: answering(409, JSON.stringify(problem)) });
    expect(reply).toEqual({ ok: false, fault: { code: 'TAKEN', message: problem.detail } });
  });

  it('tells a server that is not there from one that is too slow', async () => {
    const failing =
      (name: string): typeof fetch =>
      () =>
        Promise.reject(Object.assign(new Error(name), { name }));
    const told = async (name: string, body?: object): Promise<unknown> => {
      const reply = await request('/api/x', shape, { fetch: failing(name), ...(body === undefined ? {} : { body }) });
      return reply.ok ? reply : reply.fault.code;
    };
    expect(await told('TypeError', { act: 1 })).toBe('REQUEST_NOT_SENT');
    expect(await told('TimeoutError', { act: 1 })).toBe('REQUEST_TIMED_OUT');
    // Of what was only read nobody is told that nothing was confirmed.
    expect(await told('TypeError')).toBe('READING_NOT_SENT');
    expect(await told('TimeoutError')).toBe('READING_TIMED_OUT');
  });

  it('does not take a page of another kind for an answer', async () => {
    expect(await request('/api/x', shape, { fetch: answering(200, '<html>') })).toMatchObject({
      fault: { code: 'REPLY_MALFORMED' },
    });
  });
});
