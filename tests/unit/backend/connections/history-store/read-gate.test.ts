import { describe, expect, it } from 'vitest';
import { ReadGate } from '../../../../../backend/src/connections/history-store/embedded/read-gate';

/** A job that ends when told. */
function job(log: string[], name: string) {
  let end: () => void = () => undefined;
  const over = new Promise<void>((resolve) => (end = resolve));
  const run = async () => {
    log.push(`${name} begins`);
    await over;
    log.push(`${name} ends`);
  };
  return { run, end };
}

describe('the gate between readers and a change', () => {
  it('lets readers in together, a change in alone, and readers that come meanwhile after it', async () => {
    const log: string[] = [];
    const gate = new ReadGate();
    const [a, b, change, late] = ['a', 'b', 'change', 'late'].map((name) => job(log, name));
    if (!a || !b || !change || !late) throw new Error('four jobs');
    const all = [gate.read(a.run), gate.read(b.run), gate.change(change.run), gate.read(late.run)];
    for (const one of [late, change, a, b]) one.end();
    await Promise.all(all);
    expect(log.slice(0, 2)).toEqual(['a begins', 'b begins']);
    expect(log.indexOf('change begins')).toBeGreaterThan(log.indexOf('b ends'));
    expect(log.indexOf('late begins')).toBeGreaterThan(log.indexOf('change ends'));
  });

  it('opens again after a change that failed', async () => {
    const gate = new ReadGate();
    await expect(gate.change(() => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(await gate.read(() => Promise.resolve(7))).toBe(7);
  });
});
