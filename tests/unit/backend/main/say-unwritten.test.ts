import { describe, expect, it } from 'vitest';
import { sayUnwritten } from '../../../../backend/src/main/say-unwritten';

describe('the last word on history', () => {
  it('tells how many rows were not written, and nothing where all were', () => {
    const said: string[] = [];
    sayUnwritten(0, (line) => said.push(line));
    expect(said).toEqual([]);
    sayUnwritten(12, (line) => said.push(line));
    expect(said.join()).toContain('12 rows could not be written before the end and are lost');
  });
});
