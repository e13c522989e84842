import { describe, expect, it } from 'vitest';
import { judgeConnection } from '../../../../frontend/src/state/judge-connection';

describe('the state of the connection', () => {
  it('is judged by the time since the last frame, though the socket stays open', () => {
    expect(judgeConnection('open', 900)).toBe('live');
    expect(judgeConnection('open', 2_000)).toBe('lagging');
    expect(judgeConnection('open', 2_600)).toBe('lost');
  });

  it('is lost at once where the socket closes', () => {
    expect(judgeConnection('closed', 10)).toBe('lost');
    expect(judgeConnection('closed', null)).toBe('lost');
  });

  it('is connecting until the first frame', () => {
    expect(judgeConnection('connecting', null)).toBe('connecting');
    expect(judgeConnection('open', null)).toBe('connecting');
  });
});
