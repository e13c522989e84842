import { describe, expect, it } from 'vitest';
import { journalFactsSchema } from '@ebbline/shared/contract/journal-facts';
import { factsOfTransition, factsText } from '../../../../../backend/src/connections/alarm-journal/journal-facts';
import type { ToldTransition } from '../../../../../backend/src/ports/alarm-journal';
import { startMs, transition } from '../../../../contract/journal-samples';

const hour = 3_600_000;
const factsOf = (changes: Partial<ToldTransition>): unknown =>
  JSON.parse(factsText(factsOfTransition({ ...transition(), ...changes })) ?? 'null');
const iso = (ms: number): string => new Date(ms).toISOString();

describe('facts of a change of an alarm', () => {
  it('are none where nothing more is known, so that the row is as it was before there were facts', () => {
    expect(factsOf({})).toBeNull();
  });

  it('hold quality, class, operating position and what was known of the case', () => {
    const facts = { quality: 'uncertain', class: 'air', position: 'north', detail: 'gas load 0.4 L/s' } as const;
    expect(factsOf(facts)).toEqual(facts);
    expect(journalFactsSchema.parse(factsOf(facts))).toEqual(facts);
  });

  it('tell of shelving since when, for how long, until when, by whom and why', () => {
    const shelved = {
      mode: 'shelved',
      modeFrom: 'inService',
      modeSinceMs: startMs,
      modeUntilMs: startMs + hour,
      modeBy: 'Ines',
      modeReason: 'filter is changed at noon',
    } as const;
    const told = {
      ...{ fromMode: 'inService', toMode: 'shelved', setAsideSince: iso(startMs), setAsideUntil: iso(startMs + hour) },
      ...{ setAsideBy: 'Ines', setAsideReason: 'filter is changed at noon', minutes: 60 },
    };
    expect(factsOf({ ...shelved, cause: 'shelve' })).toEqual(told);
    expect(journalFactsSchema.parse(told)).toEqual(told);
  });

  it('tell at the end of out of service what was planned, by whom, and what watched meanwhile', () => {
    const back = {
      mode: 'inService',
      modeFrom: 'outOfService',
      modeSinceMs: startMs,
      modeUntilMs: startMs + 9 * hour,
      modeBy: 'Ines',
      modeReason: 'sensor is out',
      interimMeasures: 'gauge read by hand',
    } as const;
    expect(factsOf({ ...back, cause: 'returnToService', actor: 'Omar', atMs: startMs + 7 * hour })).toEqual({
      ...{ fromMode: 'outOfService', toMode: 'inService', setAsideSince: iso(startMs) },
      ...{ setAsideUntil: iso(startMs + 9 * hour), setAsideBy: 'Ines', setAsideReason: 'sensor is out' },
      interimMeasures: 'gauge read by hand',
    });
  });

  it('say of an end that nobody planned only since when it was', () => {
    const design = {
      mode: 'suppressedByDesign',
      modeFrom: 'inService',
      modeSinceMs: startMs,
      modeUntilMs: null,
    } as const;
    expect(factsOf({ ...design, modeBy: null, modeReason: '' })).toEqual({
      ...{ fromMode: 'inService', toMode: 'suppressedByDesign', setAsideSince: iso(startMs) },
    });
  });
});
