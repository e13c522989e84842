import { describe, expect, it } from 'vitest';
import type { AlertChange } from '../../../../backend/src/evaluation/pipeline/alert-record';
import type { PermitChange } from '../../../../backend/src/evaluation/pipeline/permit-record';
import type { AlarmJournal } from '../../../../backend/src/ports/alarm-journal';
import { RecordedChanges } from '../../../../backend/src/runner/recorded-changes';

const permit = (what: PermitChange['what']) => ({ what }) as unknown as PermitChange;
const alert = (what: AlertChange['what']) => ({ what }) as unknown as AlertChange;

function bench() {
  const disk = { full: false };
  const kept: string[] = [];
  const take = (changes: readonly { readonly what: string }[]): void => {
    if (disk.full) throw new Error('no space left');
    kept.push(...changes.map(({ what }) => what));
  };
  const journal = { appendPermits: take, appendAlerts: take } as unknown as AlarmJournal;
  return { disk, kept, changes: new RecordedChanges(journal) };
}

describe('changes of permits and alerts', () => {
  it('are kept in order while the journal refuses, and committed once when it takes them again', () => {
    const { disk, kept, changes } = bench();
    disk.full = true;
    changes.record([permit('overdue')], [alert('came')], 1);
    changes.record([permit('closed')], [alert('went')], 2);
    expect(changes.waiting()).toBe(4);
    disk.full = false;
    changes.record([], [], 3);
    expect(kept).toEqual(['overdue', 'closed', 'came', 'went']);
    expect(changes.waiting()).toBe(0);
    changes.record([], [], 4);
    expect(kept).toHaveLength(4);
  });

  it('come before what a person does: that is refused while they wait', () => {
    const { disk, kept, changes } = bench();
    disk.full = true;
    changes.record([permit('overdue')], [], 1);
    expect(changes.recordAction(permit('opened'), 2)).toBe(false);
    disk.full = false;
    expect(changes.recordAction(permit('opened'), 3)).toBe(true);
    expect(kept).toEqual(['overdue', 'opened']);
  });

  it('are not kept for later where a person was told that nothing was done', () => {
    const { disk, kept, changes } = bench();
    disk.full = true;
    expect(changes.recordAction(permit('opened'), 1)).toBe(false);
    disk.full = false;
    changes.record([], [], 2);
    expect(kept).toEqual([]);
  });
});
