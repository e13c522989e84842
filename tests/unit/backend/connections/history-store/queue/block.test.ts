import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openBlock, sealBlock } from '../../../../../../backend/src/connections/history-store/queue/block';
import { headerBytes, readHeader } from '../../../../../../backend/src/connections/history-store/queue/block-header';
import { queuedLayout, readLayout } from '../../../../../../backend/src/connections/history-store/queue/queued-layout';
import { layout, rowsOf, type SampleRow, startMs } from '../../../../../contract/history-samples';

const named = queuedLayout(layout);

/** Rows of both holders in any order, with every kind of number that there is. */
const anyRow: fc.Arbitrary<SampleRow> = fc.integer({ min: 0, max: 1 }).chain((holder) => {
  const width = named.widths[holder] ?? 0;
  return fc.record({
    holder: fc.constant(holder),
    atMs: fc.integer({ min: 0, max: 4e9 }).map((second) => second * 1000),
    values: fc.array(fc.double(), { minLength: width, maxLength: width }),
    quality: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: width, maxLength: width }),
  });
});

const bitsOf = (values: Float64Array): number[] => [...new Uint8Array(Float64Array.from(values).buffer)];

describe('a block of rows', () => {
  it('gives back every row to the last bit', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyRow, { minLength: 1, maxLength: 20 }), async (samples) => {
        const rows = rowsOf(samples);
        const { header, bytes } = await sealBlock(rows, named);
        expect(readHeader(bytes)).toEqual(header);
        const again = await openBlock(header, bytes.subarray(headerBytes), named);
        expect(again).toMatchObject({ holder: rows.holder, secondMs: rows.secondMs, offset: rows.offset });
        expect(again?.quality).toEqual(rows.quality);
        expect(bitsOf(again?.values ?? new Float64Array())).toEqual(bitsOf(rows.values));
        expect(header.oldestMs).toBe(Math.min(...samples.map(({ atMs }) => atMs)));
        expect(header.newestMs).toBe(Math.max(...samples.map(({ atMs }) => atMs)));
      }),
    );
  });

  it('is refused with any one bit changed', async () => {
    const { header, bytes } = await sealBlock(rowsOf([{ holder: 0, atMs: startMs, values: [1, 2, 3] }]), named);
    for (let bit = 0; bit < bytes.length * 8; bit++) {
      const damaged = Buffer.from(bytes);
      damaged[bit >> 3] = (damaged[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      const read = readHeader(damaged);
      const body = damaged.subarray(headerBytes);
      const rows = read === null ? null : await openBlock(header, body, named);
      expect(rows).toBeNull();
    }
  });

  it('names its layout by what stands in it', () => {
    expect(readLayout(named.id, named.text)?.layout).toEqual(layout);
    expect(readLayout(named.id, named.text.replace('loop.flow', 'loop.flaw'))).toBeNull();
    expect(queuedLayout({ holders: [...layout.holders].reverse() }).id).not.toBe(named.id);
  });
});
