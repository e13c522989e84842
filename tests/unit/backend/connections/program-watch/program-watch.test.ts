import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { afterEach, describe, expect, it } from 'vitest';
import { RunningProgramWatch } from '../../../../../backend/src/connections/program-watch/program-watch';
import { temporaryFolder } from '../../../../helpers/temporary-folder';
import { until } from '../../../../helpers/until';

const closing: (() => Promise<void> | void)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

function bench(folder: string) {
  const clock = new ManualClock(0);
  const works: (() => void)[] = [];
  const ticker = { every: (_: number, work: () => void) => (works.push(work), { stop: () => undefined }) };
  const watch = new RunningProgramWatch(folder, clock, ticker);
  closing.push(() => watch.stop());
  const [look, turn] = works as [() => void, () => void];
  return { clock, watch, look, turn };
}

describe('the watch over the running program', () => {
  it('tells memory, processor time and room on the disk of the data folder', async () => {
    const folder = await temporaryFolder();
    closing.push(() => folder.stop());
    const { watch, clock } = bench(folder.path);
    await until(() => Promise.resolve(Number.isNaN(watch.figures().diskBytes) ? null : true));
    clock.advance(2500);
    const figures = watch.figures();
    expect(figures.diskFreeBytes).toBeGreaterThan(0);
    expect(figures.diskFreeBytes).toBeLessThanOrEqual(figures.diskBytes);
    expect(figures.residentBytes).toBeGreaterThan(figures.heapBytes);
    expect(figures.userCpuS).toBeGreaterThan(0);
    expect(figures.runningForS).toBe(2.5);
  });

  it('knows no room where the system tells none', async () => {
    const { watch, turn } = bench('/there/is/no/such/folder');
    turn();
    await Promise.resolve();
    expect(watch.figures().diskFreeBytes).toBeNaN();
  });

  it('keeps the worst delay of the thread until it is asked, and forgets no hold-up', () => {
    const { clock, watch, look } = bench('.');
    clock.advance(100);
    look();
    expect(watch.takeWorstDelayS()).toBe(0);
    clock.advance(1600);
    look();
    clock.advance(100);
    look();
    expect(watch.takeWorstDelayS()).toBe(1.5);
    expect(watch.takeWorstDelayS()).toBe(0);
  });
});
