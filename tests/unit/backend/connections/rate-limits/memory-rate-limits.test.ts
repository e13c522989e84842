import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { limitsOfKind } from '../../../../../backend/src/connections/rate-limits/limits-of-kind';
import { memoryRateLimits } from '../../../../../backend/src/connections/rate-limits/memory-rate-limits';
import { networkOf } from '../../../../../backend/src/access/network-of';

const tight = { ...limitsOfKind, read: { points: 3, windowS: 10 }, action: { points: 1, windowS: 10 } };

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

async function times(count: number, ask: () => Promise<number | null>): Promise<(number | null)[]> {
  const answers: (number | null)[] = [];
  for (let i = 0; i < count; i++) answers.push(await ask());
  return answers;
}

describe('rate limits', () => {
  it('let through so much a window, say how long to wait, and let through again after it', async () => {
    const limits = memoryRateLimits(tight);
    const ask = () => limits.waitOf('read', '192.0.2.1');
    expect(await times(4, ask)).toEqual([null, null, null, 10]);
    vi.advanceTimersByTime(6500);
    expect(await ask()).toBe(4);
    vi.advanceTimersByTime(3500);
    expect(await ask()).toBeNull();
    expect(limits.refused()).toMatchObject({ read: 2, action: 0 });
  });

  it('say what is counted so far without adding to it', async () => {
    const limits = memoryRateLimits(tight);
    const look = () => limits.waitNow('read', '192.0.2.1');
    expect(await times(9, look)).toEqual(Array(9).fill(null));
    expect(await times(3, () => limits.waitOf('read', '192.0.2.1'))).toEqual([null, null, null]);
    expect(await times(2, look)).toEqual([10, 10]);
    expect(await limits.waitNow('read', '192.0.2.2')).toBeNull();
    vi.advanceTimersByTime(10_000);
    expect(await look()).toBeNull();
  });

  it('count each kind and each station apart', async () => {
    const limits = memoryRateLimits(tight);
    expect(await times(2, () => limits.waitOf('action', '192.0.2.1'))).toEqual([null, 10]);
    expect(await limits.waitOf('read', '192.0.2.1')).toBeNull();
    expect(await limits.waitOf('action', '192.0.2.2')).toBeNull();
  });

  it('hold so many stations apart and count all further ones together, until a window has passed', async () => {
    const limits = memoryRateLimits(tight, 2);
    expect(await limits.waitOf('action', '192.0.2.1')).toBeNull();
    expect(await limits.waitOf('action', '192.0.2.2')).toBeNull();
    expect(await limits.waitOf('action', '192.0.2.3')).toBeNull();
    expect(await limits.waitOf('action', '192.0.2.4')).toBe(10);
    expect(await limits.waitOf('read', '192.0.2.4')).toBeNull();
    vi.advanceTimersByTime(10_001);
    expect(await limits.waitOf('action', '192.0.2.4')).toBeNull();
    expect(await limits.waitOf('action', '192.0.2.3')).toBeNull();
  });

  it('never make anyone wait longer than the window, also where the clock was set back', async () => {
    const limits = memoryRateLimits(tight);
    await limits.waitOf('action', '192.0.2.1');
    vi.setSystemTime(Date.now() - 3_600_000);
    expect(await limits.waitOf('action', '192.0.2.1')).toBe(10);
  });

  it('leave room for fifty screens behind one address that load at once', async () => {
    const limits = memoryRateLimits();
    const load = await times(50 * 30, () => limits.waitOf('read', '192.0.2.1'));
    expect(load.every((wait) => wait === null)).toBe(true);
    const back = await times(50 * 60, () => limits.waitOf('handshake', '192.0.2.1'));
    expect(back.every((wait) => wait === null)).toBe(true);
  });
});

describe('a station', () => {
  it.for([
    ['192.0.2.1', '192.0.2.1'],
    ['2001:db8::1', '2001:db8:0:0::/64'],
    ['2001:0db8:0000:0000:ffff:1:2:3', '2001:db8:0:0::/64'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
    ['fe80::1%eth0', 'fe80:0:0:0::/64'],
    ['::1', '0:0:0:0::/64'],
  ] as const)('%s is counted as %s (RFC 4291 section 2.5.4: 64 bits of a network)', ([address, network]) => {
    expect(networkOf(address)).toBe(network);
  });
});
