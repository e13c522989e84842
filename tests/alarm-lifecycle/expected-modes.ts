import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';
import type { ModeEvent } from '../../backend/src/evaluation/alarm-lifecycle/mode-table';

/**
 * Written by hand from what ANSI/ISA-18.2-2016 and IEC 62682 say of shelving, suppression by design and removal from service
 * (as retold in the project's reference; clause numbers from memory), not from the program's table. One line a case:
 * mode | event | next mode | next mode where logic suppresses the alarm at that time. `-` = nothing may change,
 * `!CODE` = refused to the person.
 */
const table = `
inService          | shelve          | shelved            | shelved
inService          | unshelve        | !ALARM_NOT_SHELVED | !ALARM_NOT_SHELVED
inService          | shelvingOver    | -                  | -
inService          | suppress        | suppressedByDesign | suppressedByDesign
inService          | unsuppress      | -                  | -
inService          | takeOut         | outOfService       | outOfService
inService          | returnToService | !ALARM_NOT_OUT_OF_SERVICE | !ALARM_NOT_OUT_OF_SERVICE
shelved            | shelve          | !ALARM_SHELVED_ALREADY    | !ALARM_SHELVED_ALREADY
shelved            | unshelve        | inService          | suppressedByDesign
shelved            | shelvingOver    | inService          | suppressedByDesign
shelved            | suppress        | -                  | -
shelved            | unsuppress      | -                  | -
shelved            | takeOut         | outOfService       | outOfService
shelved            | returnToService | !ALARM_NOT_OUT_OF_SERVICE | !ALARM_NOT_OUT_OF_SERVICE
suppressedByDesign | shelve          | shelved            | shelved
suppressedByDesign | unshelve        | !ALARM_NOT_SHELVED | !ALARM_NOT_SHELVED
suppressedByDesign | shelvingOver    | -                  | -
suppressedByDesign | suppress        | -                  | -
suppressedByDesign | unsuppress      | inService          | inService
suppressedByDesign | takeOut         | outOfService       | outOfService
suppressedByDesign | returnToService | !ALARM_NOT_OUT_OF_SERVICE | !ALARM_NOT_OUT_OF_SERVICE
outOfService       | shelve          | !ALARM_OUT_OF_SERVICE     | !ALARM_OUT_OF_SERVICE
outOfService       | unshelve        | !ALARM_NOT_SHELVED | !ALARM_NOT_SHELVED
outOfService       | shelvingOver    | -                  | -
outOfService       | suppress        | -                  | -
outOfService       | unsuppress      | -                  | -
outOfService       | takeOut         | !ALARM_OUT_OF_SERVICE     | !ALARM_OUT_OF_SERVICE
outOfService       | returnToService | inService          | suppressedByDesign
`;

export interface ExpectedMode {
  readonly from: AlarmMode;
  readonly event: ModeEvent;
  readonly suppressed: boolean;
  /** Next mode, or null where nothing may change. */
  readonly to: AlarmMode | null;
  readonly refusal: string | null;
}

export const expectedModes: readonly ExpectedMode[] = table
  .trim()
  .split('\n')
  .flatMap((line) => {
    const [from = '', event = '', told = '', suppressed = ''] = line.split('|').map((cell) => cell.trim());
    return [told, suppressed].map((cell, i) => ({
      from: from as AlarmMode,
      event: event as ModeEvent,
      suppressed: i === 1,
      to: cell === '-' || cell.startsWith('!') ? null : (cell as AlarmMode),
      refusal: cell.startsWith('!') ? cell.slice(1) : null,
    }));
  });
