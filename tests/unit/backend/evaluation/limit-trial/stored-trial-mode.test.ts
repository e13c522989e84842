import { expect, it } from 'vitest';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { deskOver, tried } from '../../../../helpers/trial-of-limits';
import { Plant, plantSite, startMs } from '../pipeline/plant';

it('a trial on stored points runs in the mode that the standby pump tells: the alarm of a loop that it carries is found', async () => {
  const site = plantSite({
    unit: { supplyClassLimit: '45 °C' },
    points: { 'pump.standby.running': { path: 'standbyPump' } },
  });
  const history = historyInMemory(site);
  const plant = new Plant(site);
  Object.assign(plant.m1, { pumpRunning: false, standbyPump: true });
  for (let second = 0; second < 600; second += 1) {
    if (second === 200) Object.assign(plant.m1, { tSupply: 50, tReturn: 59 });
    plant.run(1);
    const rows = plant.pipeline.drainHistory(plant.nowMs, false);
    if (rows !== null) history.write(rows);
  }
  expect(plant.standing('TSUP-2')?.active).toBe(true);
  const iso = (second: number): string => new Date(startMs + second * 1000).toISOString();
  const request = {
    entry: 'TSUP-2' as const,
    units: ['m1'],
    from: iso(0),
    to: iso(600),
    proposed: { onDelaySeconds: 20 },
  };
  const trial = await tried(deskOver(site, history), request);
  expect(trial.method).toBe('stored');
  expect(trial.live?.episodes).toHaveLength(1);
});
