import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';

/** What can happen to the mode of an alarm: by a person, by the clock (`shelvingOver`), or by logic (`suppress`, `unsuppress`). */
export type ModeEvent =
  'shelve' | 'unshelve' | 'shelvingOver' | 'suppress' | 'unsuppress' | 'takeOut' | 'returnToService';

export const modeEvents: readonly ModeEvent[] = [
  'shelve',
  'unshelve',
  'shelvingOver',
  'suppress',
  'unsuppress',
  'takeOut',
  'returnToService',
];

export type RefusalOfMode =
  'ALARM_SHELVED_ALREADY' | 'ALARM_NOT_SHELVED' | 'ALARM_OUT_OF_SERVICE' | 'ALARM_NOT_OUT_OF_SERVICE';

/**
 * Where an event leads: a mode (its own = nothing happens), back to being told (where logic suppresses the alarm at that
 * very time: suppressed by design), or a refusal told to who acted.
 */
export type ModeCell = { readonly to: AlarmMode } | { readonly back: true } | { readonly refuse: RefusalOfMode };

const to = (mode: AlarmMode): ModeCell => ({ to: mode });
const back: ModeCell = { back: true };
const refuse = (code: RefusalOfMode): ModeCell => ({ refuse: code });

/**
 * Mode × event → mode, after ANSI/ISA-18.2-2016 and IEC 62682 (clause numbers from memory). What a person set aside is
 * not touched by logic; a shelved alarm may be taken out of service, and one that is out of service is not shelved: it
 * would end by itself what only a person may end.
 */
export const modeTable: Readonly<Record<AlarmMode, Readonly<Record<ModeEvent, ModeCell>>>> = {
  inService: {
    shelve: to('shelved'),
    unshelve: refuse('ALARM_NOT_SHELVED'),
    shelvingOver: to('inService'),
    suppress: to('suppressedByDesign'),
    unsuppress: to('inService'),
    takeOut: to('outOfService'),
    returnToService: refuse('ALARM_NOT_OUT_OF_SERVICE'),
  },
  shelved: {
    shelve: refuse('ALARM_SHELVED_ALREADY'),
    unshelve: back,
    shelvingOver: back,
    suppress: to('shelved'),
    unsuppress: to('shelved'),
    takeOut: to('outOfService'),
    returnToService: refuse('ALARM_NOT_OUT_OF_SERVICE'),
  },
  suppressedByDesign: {
    shelve: to('shelved'),
    unshelve: refuse('ALARM_NOT_SHELVED'),
    shelvingOver: to('suppressedByDesign'),
    suppress: to('suppressedByDesign'),
    unsuppress: to('inService'),
    takeOut: to('outOfService'),
    returnToService: refuse('ALARM_NOT_OUT_OF_SERVICE'),
  },
  outOfService: {
    shelve: refuse('ALARM_OUT_OF_SERVICE'),
    unshelve: refuse('ALARM_NOT_SHELVED'),
    shelvingOver: to('outOfService'),
    suppress: to('outOfService'),
    unsuppress: to('outOfService'),
    takeOut: refuse('ALARM_OUT_OF_SERVICE'),
    returnToService: back,
  },
};
