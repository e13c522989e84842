import type uPlot from 'uplot';
import { describe, expect, it } from 'vitest';
import { drawLetters, drawLimits } from '../../../../frontend/src/charts/draw-lane';
import type { LaneInk } from '../../../../frontend/src/charts/lane-ink';

const ink: LaneInk = { lines: ['#111'], soft: '#222', grid: '#333', ink: '#444', paper: '#555' };

/** A canvas as the axes leave it: their alignment stays behind. Notes what is written, and from which edge. */
function aChart() {
  const written: { text: string; align: string; baseline: string; x: number }[] = [];
  const nothing = (): void => undefined;
  const ctx = {
    canvas: { width: 400 },
    textAlign: 'right',
    textBaseline: 'middle',
    save: nothing,
    restore: nothing,
    setLineDash: nothing,
    beginPath: nothing,
    moveTo: nothing,
    lineTo: nothing,
    stroke: nothing,
    fillRect: nothing,
    measureText: (text: string) => ({ width: text.length * 6 }),
    fillText(text: string, x: number) {
      written.push({ text, align: ctx.textAlign, baseline: ctx.textBaseline, x });
    },
  };
  const bbox = { left: 72, top: 8, width: 300, height: 100 };
  const chart = { ctx, bbox, width: 400, valToPos: (value: number) => 50 + value };
  return { chart: chart as unknown as uPlot, written };
}

describe('what is written into a lane', () => {
  it('names a limit inside the picture, from its left edge on, whatever the axes left behind', () => {
    const { chart, written } = aChart();
    drawLimits(chart, [{ value: 5, name: 'MARGIN-1 low, below' }], ink);
    expect(written).toEqual([{ text: 'MARGIN-1 low, below', align: 'left', baseline: 'alphabetic', x: 78 }]);
  });

  it('cuts no name of a limit at the right edge: the point goes first, then the end, with a sign', () => {
    const { chart, written } = aChart();
    const long = 'FILTER-1 filter pressure drop high, above';
    drawLimits(chart, [{ value: 5, name: `${long} · Filter pressure drop` }], ink);
    drawLimits(chart, [{ value: 9, name: `${long} and further still than that · Filter` }], ink);
    const [first, second] = written.map(({ text }) => text);
    expect(first).toBe(long);
    expect(second?.endsWith('…')).toBe(true);
    expect((second?.length ?? 0) * 6).toBeLessThanOrEqual(300 - 12);
  });

  it('writes the letter of a line behind its end', () => {
    const { chart, written } = aChart();
    const line = { key: '', ink: 0, seconds: [1], min: [1], mean: [1], max: [1], uncertainty: null };
    drawLetters(
      chart,
      [
        { ...line, letter: 'a' },
        { ...line, letter: 'b' },
      ],
      ink,
    );
    expect(written.map(({ text, align }) => [text, align])).toEqual([
      ['a', 'left'],
      ['b', 'left'],
    ]);
  });
});
