import { describe, expect, it } from 'vitest';
import { hour, layout, pressures, rowsOf, second, startMs, type SampleRow } from './history-samples';
import type { StoreUnderTest } from './store-under-test';

const [unit] = layout.holders;
const columns = unit?.columns ?? [];

/** What a store gives back second by second; `subject` is asked anew in each test. */
export function historySecondsContract(subject: () => StoreUnderTest): void {
  const read = async (fromMs: number, toMs: number, asked = columns, holder = 'unit-1') => {
    const seconds = await subject().store.readSeconds({ holder, columns: asked, fromMs, toMs });
    const values = seconds.values.map((column) => [...column].map((value) => (Number.isNaN(value) ? null : value)));
    return { values, quality: seconds.quality.map((column) => [...column]), count: seconds.count };
  };
  const row = (index: number, values: SampleRow['values'], quality?: readonly number[]): SampleRow => ({
    holder: 0,
    atMs: startMs + index * second,
    values,
    ...(quality === undefined ? {} : { quality }),
  });

  describe('readSeconds', () => {
    it('gives each second with its quality, from in and to left out, and gaps as gaps', async () => {
      const rows = [row(0, [1, 2, null]), row(1, [3, null, 4], [2, 3, 1]), row(3, [5, 6, 7])];
      await subject().store.write(rowsOf(rows));
      expect(await read(startMs, startMs + 3 * second)).toEqual({
        count: 3,
        values: [
          [1, 3, null],
          [2, null, null],
          [null, 4, null],
        ],
        quality: [
          [1, 2, 0],
          [1, 3, 0],
          [0, 1, 0],
        ],
      });
    });

    it('gives the columns in the order asked for, and an empty one where nobody wrote', async () => {
      await subject().store.write(rowsOf([row(0, [1, 2, 3])]));
      const [pressure, flow] = columns;
      if (pressure === undefined || flow === undefined) throw new Error('two columns');
      const asked = [flow, { point: 'no.such', unitOfMeasure: '1' }, pressure];
      expect((await read(startMs, startMs + second, asked)).values).toEqual([[2], [null], [1]]);
      expect((await read(startMs, startMs + second, asked, 'unit-9')).values).toEqual([[null], [null], [null]]);
    });

    it('lets the later write of a second win value by value, and takes nothing away', async () => {
      await subject().store.write(rowsOf([row(0, [1, 2, null], [1, 2, 0])]));
      await subject().store.write(rowsOf([row(0, [null, 5, 6], [3, 1, 2])]));
      const { values, quality } = await read(startMs, startMs + second);
      expect(values).toEqual([[1], [5], [6]]);
      expect(quality).toEqual([[1], [1], [2]]);
    });

    it('gives the same of an hour that was sealed, and of one that was written to after that', async () => {
      await subject().store.write(pressures(startMs, 3600, (index) => (index % 7 === 0 ? null : index / 8)));
      await subject().store.write(rowsOf([row(10, [null, 4, null], [0, 2, 0])]));
      const before = await read(startMs, startMs + hour);
      await subject().store.maintain(startMs + 2 * hour);
      expect(await read(startMs, startMs + hour)).toEqual(before);
      await subject().store.write(rowsOf([row(14, [99, null, null])]));
      const after = await read(startMs, startMs + hour);
      expect(after.values[0]?.slice(12, 16)).toEqual([1.5, 1.625, 99, 1.875]);
      expect(after.values[1]?.slice(9, 12)).toEqual([null, 4, null]);
      expect(after.quality[1]?.slice(9, 12)).toEqual([0, 2, 0]);
    });

    it('gives several holders at once as it gives each alone, sealed or not', async () => {
      const other = layout.holders[1];
      const [pressure, flow] = columns;
      if (other === undefined || pressure === undefined || flow === undefined) throw new Error('two holders');
      const nobody = { point: 'no.such', unitOfMeasure: '1' };
      const holders = [
        { holder: other.id, columns: [nobody, ...other.columns] },
        { holder: 'unit-1', columns: [pressure] },
        { holder: 'unit-9', columns },
        { holder: 'unit-1', columns: [flow, nobody, pressure] },
        { holder: other.id, columns: [nobody] },
      ];
      await subject().store.write(pressures(startMs, 3600, (index) => (index % 7 === 0 ? null : index / 8)));
      await subject().store.write(
        rowsOf([
          row(3, [9, 4, null], [1, 2, 0]),
          { holder: 1, atMs: startMs + 4 * second, values: [8], quality: [2] },
          { holder: 1, atMs: startMs + 5 * second, values: [null], quality: [3] },
        ]),
      );
      const check = async () => {
        const span = { fromMs: startMs + second, toMs: startMs + 9 * second };
        const together = await subject().store.readTogether({ holders, ...span });
        const alone = await Promise.all(holders.map((one) => subject().store.readSeconds({ ...one, ...span })));
        expect(together).toEqual(alone);
        expect([together[0]?.values[1]?.[3], together[0]?.quality[1]?.[3]]).toEqual([8, 2]);
        expect([together[0]?.values[1]?.[4], together[0]?.quality[1]?.[4]]).toEqual([NaN, 3]);
        expect([together[1]?.values[0]?.[2], together[3]?.values[0]?.[2], together[3]?.values[2]?.[2]]).toEqual([
          9, 4, 9,
        ]);
      };
      await check();
      await subject().store.maintain(startMs + 2 * hour);
      await check();
      await subject().store.write(rowsOf([{ holder: 1, atMs: startMs + 6 * second, values: [7], quality: [1] }]));
      await check();
    });

    it('refuses what is no period of whole seconds within a day', async () => {
      for (const [fromMs, toMs] of [
        [startMs, startMs],
        [startMs + 1, startMs + second],
        [startMs, startMs + 24 * hour + second],
      ] as const)
        await expect(read(fromMs, toMs)).rejects.toThrow('HISTORY_QUERY_INVALID');
    });
  });
}
