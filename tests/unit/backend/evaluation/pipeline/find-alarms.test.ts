import { describe, expect, it } from 'vitest';
import { settled } from './settled-plant';
import { putAside } from './set-aside-plant';

const plant = settled();
const idsOf = (words: string, most = 50): string[] =>
  plant.pipeline.findAlarms(words.split(' '), most, plant.nowMs).found.map(({ record }) => record.alarm);

describe('alarms that can be set aside', () => {
  it('are found by entry, title, unit, branch and point, whatever is written large, standing or not', () => {
    expect(idsOf('flow-3 m1 r2')).toEqual(['m1:FLOW-3:r2']);
    expect(idsOf('WATER m1')).toContain('m1:WATER-1');
    expect(idsOf('ins-1 separator.pressure')).toEqual(['m1:INS-1:separator.pressure']);
    expect(idsOf('com-1')).toEqual(['g:COM-1']);
    expect(idsOf('sys-1')).toEqual(['program:SYS-1']);
    expect(idsOf('flow-3 nowhere')).toEqual([]);
  });

  it('are none that the site does not measure for, no place of a unit that only says whether a part is in alarm, and no alert', () => {
    expect(idsOf('flow-3')).not.toContain('m1:FLOW-3');
    expect(idsOf('fil-2')).toEqual([]);
    expect(idsOf('amb-1')).toEqual([]);
  });

  it('come with the place and the longest time, and as they are where they are set aside', () => {
    const find = () => plant.pipeline.findAlarms(['flow-3', 'r2'], 9, plant.nowMs).found;
    expect(find()).toMatchObject([{ record: { state: 'normal', where: 'Rack 2' }, longestShelvingMs: 8 * 3_600_000 }]);
    putAside(plant, 'm1:FLOW-3:r2', { kind: 'shelve', forMs: 60_000 });
    expect(find()).toMatchObject([{ record: { mode: 'shelved', modeBy: 'Ada', where: 'Rack 2' } }]);
    expect(plant.pipeline.findAlarms(['water-1'], 9, plant.nowMs).found[0]?.longestShelvingMs).toBe(3_600_000);
  });

  it('end at a number, and say that there are more', () => {
    const { found, more } = plant.pipeline.findAlarms(['m1'], 3, plant.nowMs);
    expect([found.length, more]).toEqual([3, true]);
    expect(plant.pipeline.findAlarms(['flow-3', 'r2'], 1, plant.nowMs).more).toBe(false);
  });
});
