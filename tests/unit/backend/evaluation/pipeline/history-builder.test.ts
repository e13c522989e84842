import { describe, expect, it } from 'vitest';
import { HistoryBuilder } from '../../../../../backend/src/evaluation/pipeline/history-builder';
import type { HistoryRows } from '../../../../../backend/src/evaluation/pipeline/history-rows';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { slotOf } from '../../../../helpers/small-site';
import { Plant, plantSite, startMs } from './plant';

const site = plantSite();
const flow = slotOf(site, 'm1', 'loop.flow');
const supply = slotOf(site, 'm1', 'supply.temperature');

interface Cell {
  readonly second: number;
  readonly point: string;
  readonly value: number;
  readonly quality: number;
}

/** Every cell that says something, as plain objects. */
function cells(rows: HistoryRows | null): Cell[] {
  const found: Cell[] = [];
  for (let row = 0; row < (rows?.count ?? 0); row += 1) {
    const holder = site.holders[rows?.holder[row] ?? -1];
    for (let column = 0; column < (holder?.slotCount ?? 0); column += 1) {
      const at = (rows?.offset[row] ?? 0) + column;
      const quality = rows?.quality[at] ?? 0;
      if (quality === 0) continue;
      found.push({
        second: ((rows?.secondMs[row] ?? 0) - startMs) / 1000,
        point: site.slots.pointId[(holder?.firstSlot ?? 0) + column] ?? '',
        value: rows?.values[at] ?? Number.NaN,
        quality,
      });
    }
  }
  return found;
}

const at = (second: number): number => startMs + second * 1000;

describe('rows of history', () => {
  it('take the last sample of a second by its source time, in whatever order they come', () => {
    const history = new HistoryBuilder(site);
    history.put(flow, at(0.1), 1, 0);
    history.put(flow, at(0.9), 3, 0);
    history.put(flow, at(0.5), 2, 0);
    expect(cells(history.drain(at(3), false))).toEqual([{ second: 0, point: 'loop.flow', value: 3, quality: 1 }]);
  });

  it('hold nothing over: a second without a sample has no value', () => {
    const history = new HistoryBuilder(site);
    history.put(flow, at(0), 1, 0);
    history.put(supply, at(1), 36, 0);
    expect(cells(history.drain(at(10), false))).toEqual([
      { second: 0, point: 'loop.flow', value: 1, quality: 1 },
      { second: 1, point: 'supply.temperature', value: 36, quality: 1 },
    ]);
  });

  it('hold nothing over from a second that was handed out, whose memory is used again', () => {
    const history = new HistoryBuilder(site);
    history.put(flow, at(0), 1, 0);
    history.put(flow, at(1), 2, 0);
    expect(history.drain(at(10), false)?.count).toBe(2);
    history.put(supply, at(11), 36, 0);
    const rows = history.drain(at(20), false);
    expect(rows?.count).toBe(1);
    expect([...(rows?.values ?? [])].filter((value) => !Number.isNaN(value))).toEqual([36]);
    expect(cells(rows)).toEqual([{ second: 11, point: 'supply.temperature', value: 36, quality: 1 }]);
  });

  it('leave a second open for half of one more, then give it once', () => {
    const history = new HistoryBuilder(site);
    history.put(flow, at(0), 1, 0);
    expect(history.drain(at(1.499), false)).toBeNull();
    expect(cells(history.drain(at(1.5), false))).toHaveLength(1);
    expect(history.drain(at(60), true)).toBeNull();
  });

  it('come again as a partial row where a sample is late', () => {
    const history = new HistoryBuilder(site);
    history.put(flow, at(0), 1, 0);
    history.drain(at(5), false);
    history.put(supply, at(0.5), 36, 0);
    expect(cells(history.drain(at(5), false))).toEqual([
      { second: 0, point: 'supply.temperature', value: 36, quality: 1 },
    ]);
  });

  it('keep a bad value as none, with its quality, and an uncertain one marked', () => {
    const history = new HistoryBuilder(site);
    history.put(flow, at(0), 5, reasonBit.outOfRange);
    history.put(supply, at(0), 36, reasonBit.jump);
    expect(cells(history.drain(at(9), false))).toEqual([
      { second: 0, point: 'supply.temperature', value: 36, quality: 2 },
      { second: 0, point: 'loop.flow', value: Number.NaN, quality: 3 },
    ]);
  });

  it('stay flat under a flood of late samples, and lose none', () => {
    const history = new HistoryBuilder(site);
    for (let second = 0; second < 100; second += 1) history.put(flow, at(second), second, 0);
    expect(cells(history.drain(at(100), true)).map(({ value }) => value)).toEqual(
      Array.from({ length: 100 }, (_, i) => i),
    );
  });

  it('have measured values in the second of their source time and derived ones in that of the tick', () => {
    const plant = new Plant(site).run(20);
    const all = cells(plant.pipeline.drainHistory(plant.nowMs, true));
    const seconds = (point: string) => all.filter((cell) => cell.point === point).map((cell) => cell.second);
    expect(seconds('loop.flow')).toEqual(Array.from({ length: 20 }, (_, i) => i));
    expect(seconds('massFlow')).toEqual(Array.from({ length: 21 }, (_, i) => i));
  });

  it('say that a derived value is bad once its inputs are, and hold no measured value over', () => {
    const plant = new Plant(site).run(10);
    plant.pipeline.drainHistory(plant.nowMs, true);
    plant.silent.add('m1');
    plant.run(20);
    const all = cells(plant.pipeline.drainHistory(plant.nowMs, true));
    expect(all.filter(({ point }) => point === 'loop.flow')).toEqual([]);
    expect(all.filter(({ point }) => point === 'massFlow').at(-1)).toEqual({
      second: 30,
      point: 'massFlow',
      value: Number.NaN,
      quality: 3,
    });
  });
});
