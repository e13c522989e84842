import { describe, expect, it } from 'vitest';
import { reasonBit } from '../../../../backend/src/evaluation/slots/quality-reasons';
import type { AlarmJournal, ToldTransition } from '../../../../backend/src/ports/alarm-journal';
import { journalWithFacts } from '../../../../backend/src/runner/journal-with-facts';
import { record, startMs, transition } from '../../../contract/journal-samples';
import { createSlotState } from '../../../../backend/src/evaluation/slots/slot-state';
import { plantSite } from '../evaluation/pipeline/plant';

describe('the journal of a plant', () => {
  it('is told what a change was judged by when it happened, also where it is written later', () => {
    const told: (readonly ToldTransition[])[] = [];
    let refuses = true;
    const inner = {
      append(transitions: readonly ToldTransition[]) {
        told.push(transitions);
        if (refuses) throw new Error('the disk is full');
        return [];
      },
      standing: () => [record()],
    } as unknown as AlarmJournal;
    const site = plantSite();
    const state = createSlotState(site.slots.count);
    state.reasons.fill(0);
    const journal = journalWithFacts(inner, { site, state });
    expect(journal.standing()).toEqual([record()]);

    const change = transition({ alarm: 'm1:MARGIN-1', unit: 'm1', hall: 'h' });
    expect(() => journal.append([change], [], startMs)).toThrow('the disk is full');
    state.reasons.fill(reasonBit.jump);
    refuses = false;
    journal.append([change], [], startMs);
    expect(told[0]?.[0]).toEqual({ ...change, position: 'h', class: 'vacuum', quality: 'good' });
    expect(told[1]).toEqual(told[0]);
  });
});
