import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { entryIds } from '../../../../../backend/src/evaluation/alarm-rules/entry-ids';

const shapes = ['a', 'b', 'c'] as const;

describe.each(entryIds)('%s', (id) => {
  const entry = catalogue[id];
  const actions = shapes.map((shape) => entry.action[shape]);

  it('says title, cause, consequence, how to confirm, basis, and what to do first in each plant shape', () => {
    for (const text of [entry.title, entry.cause, entry.consequence, entry.confirm, entry.basis, ...actions]) {
      expect(text.trim().length).toBeGreaterThan(10);
      expect(text).not.toMatch(/\s\s|undefined|NaN/);
    }
  });

  it('never tells anyone to vent the loop, let air in, or stop the vacuum source', () => {
    for (const action of actions) {
      expect(action).not.toMatch(/\bvent(s|ed|ing)?\b/i);
      expect(action).not.toMatch(/(stop|switch off|shut down|trip)[^.;:]*vacuum/i);
      expect(action).not.toMatch(/(let|admit)[^.;:]*\bair\b/i);
      expect(action).not.toMatch(/break[^.;:]*vacuum/i);
    }
  });

  /** Without facility water the supply of unit M gains 7 K within a minute: computed, no published source. */
  it('takes no facility water from a unit without saying what carries its heat meanwhile', () => {
    for (const action of actions)
      if (/isolate the (heat )?exchanger|shut the facility water/i.test(action))
        expect(action).toMatch(/another unit take (the|its) load, or shed it/);
  });

  it('has a time to respond that leaves time to do it', () => {
    expect(entry.timeToRespondS).toBeGreaterThanOrEqual(60);
    expect(entry.defaults.onDelayMs / 1000).toBeLessThan(entry.timeToRespondS);
  });
});

describe('words', () => {
  it('say water in the alarm about water, and air in the one about air', () => {
    expect(catalogue['WATER-1'].title).toMatch(/water/i);
    expect(catalogue['WATER-1'].title).not.toMatch(/\bair\b/i);
    expect(catalogue['AIR-1'].title).toMatch(/\bair\b/i);
    expect(catalogue['AIR-1'].title).not.toMatch(/water/i);
    for (const shape of shapes) {
      expect(catalogue['WATER-1'].action[shape]).toMatch(/water/i);
      expect(catalogue['AIR-1'].action[shape]).toMatch(/rack/i);
    }
  });

  it('keep the vacuum source running wherever the loop’s own pressure is the matter', () => {
    for (const id of ['MARGIN-1', 'MARGIN-2', 'AIR-1', 'WATER-1'] as const) {
      for (const shape of shapes) expect(catalogue[id].action[shape]).toMatch(/keep the vacuum source[^.;]*running/i);
    }
  });

  // An isolated rack has no flow, and its chips stay loaded: the trapped water warms and weeps. Common practice, no source.
  it('never tell to isolate a branch without powering off its servers', () => {
    const ofBranches = entryIds.flatMap((id) =>
      shapes.flatMap((shape) =>
        (catalogue[id].action[shape].match(/[^.]*isolat(e|ing)\b[^.]*/gi) ?? []).filter(
          (sentence) => !/exchanger|lock out/i.test(sentence),
        ),
      ),
    );
    expect(ofBranches.length).toBeGreaterThanOrEqual(3 * 4);
    for (const sentence of ofBranches) expect(sentence).toMatch(/power off[^.]*servers|servers powered off/i);
  });

  it('tell of slowing the pump in shape (c) only: in (a) it does nothing for the margin', () => {
    for (const id of ['MARGIN-1', 'MARGIN-2'] as const) {
      expect(catalogue[id].action.c).toMatch(/slow the circulation pump/i);
      expect(catalogue[id].action.a).not.toMatch(/slow the/i);
    }
  });

  it('warn where a person may meet water near live equipment or a hot surface', () => {
    for (const id of ['WATER-1', 'MARGIN-2'] as const) {
      for (const shape of shapes) expect(catalogue[id].action[shape]).toMatch(/live equipment/i);
    }
    expect(catalogue['BOIL-1'].confirm).toMatch(/burns/i);
  });

  it('tell how a latched alarm is reset', () => {
    for (const id of entryIds) {
      if (catalogue[id].latching)
        for (const shape of shapes) expect(catalogue[id].action[shape]).toMatch(/once more to reset/i);
    }
  });
});
