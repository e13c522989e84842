import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsLink, readProposal, writeProposal } from '../../../../frontend/src/text/limits-link';

const number = fc.double({ min: 0, max: 86_400, noNaN: true }).map((value) => (value === 0 ? 0 : value));
const proposals = fc
  .record(
    {
      limit: number,
      low: number,
      deadband: number,
      onDelaySeconds: number,
      offDelaySeconds: number,
      enabled: fc.boolean(),
    },
    { requiredKeys: [] },
  )
  .filter((set) => Object.keys(set).length > 0);

describe('the address of an entry', () => {
  it('holds a proposal so that it is read as it was written', () => {
    fc.assert(
      fc.property(proposals, (set) => {
        expect(readProposal({ propose: writeProposal(set) })).toEqual(set);
      }),
    );
  });

  it('names the unit, the proposal and the period', () => {
    expect(limitsLink('MARGIN-1', { unit: 'N3', propose: { limit: 4500 }, from: 'a', to: 'b' })).toEqual({
      name: 'limits',
      params: { entry: 'MARGIN-1' },
      query: { unit: 'N3', propose: 'limit:4500', from: 'a', to: 'b' },
    });
  });

  it.each(['', 'limit:', 'limit:much', 'nothing:3', 'deadband:-1', 'enabled:3', 'limit:NaN'])(
    'proposes nothing by %j',
    (propose) => {
      expect(readProposal({ propose })).toBeNull();
    },
  );
});
