import type { AlertRecord } from '../../backend/src/evaluation/pipeline/alert-record';
import type { HandRecord } from '../../backend/src/evaluation/pipeline/hand-record';
import type { PermitRecord } from '../../backend/src/evaluation/pipeline/permit-record';
import type { TightnessRecord } from '../../backend/src/evaluation/pipeline/tightness-record';
import type { AlarmJournal } from '../../backend/src/ports/alarm-journal';
import { record, startMs, transition } from './journal-samples';

const day = 86_400_000;
const who = { actor: 'Ines', station: '127.0.0.1', comment: 'for the new gasket' } as const;

const hand: HandRecord = {
  id: 'm1:water.copper.hand:1',
  unit: 'm1',
  parameter: 'copper',
  value: 0.00005,
  typed: { value: 0.05, unit: 'mg/L', as: null, sampleTemperature: null },
  takenMs: startMs - day,
  enteredMs: startMs,
  by: 'Ines',
  station: '127.0.0.1',
  note: 'laboratory sheet 12',
  corrects: null,
};

/** A value that a person typed, and its withdrawal. */
export function typed(journal: AlarmJournal): void {
  journal.appendHand(hand, startMs);
  journal.appendHand({ ...hand, id: 'm1:water.copper.hand:2', value: null, typed: null, corrects: hand.id }, startMs);
}

const permit: PermitRecord = {
  id: 'unit-1-7',
  unit: 'unit-1',
  branch: 'r5',
  openedBy: 'Ines',
  station: '127.0.0.1',
  openedMs: startMs,
  untilMs: startMs + 3_600_000,
  expectedInLeakM3PerS: 0.0005,
  comment: 'hose of server 4',
  baseline: { branchFlowM3PerS: 0.0007, gasLoadM3PerS: null, waterVolumeM3: 0.17 },
  waitsFor: [],
  closedBy: null,
  closedMs: null,
};

const test: TightnessRecord = {
  id: 'unit-1:tightness:7',
  unit: 'unit-1',
  startedBy: 'Ines',
  station: '127.0.0.1',
  startedMs: startMs,
  plannedMs: 1_800_000,
  acceptanceLimitM3PerS: 2.7e-6,
  dry: false,
  sourceIsolated: false,
  gasVolumeStatedM3: null,
  comment: 'after the new gasket',
  begin: { pressurePa: 20_000, temperatureC: 25, levelM: 0.6, gasVolumeM3: 0.51, areaM2: 0.25 },
  samples: 0,
  result: null,
  steadiness: 'tooEarly',
  verdict: null,
  endedFor: null,
  endedBy: null,
  endedMs: null,
};

const alert: AlertRecord = {
  alert: 'unit-1:SET-1',
  entry: 'SET-1',
  unit: 'unit-1',
  hall: 'hall-1',
  sinceMs: startMs,
  value: null,
  limit: null,
  unitOfMeasure: null,
  where: null,
};

/** One of all else that a restart reads: a permit, a test, an alert, and an alarm that stands nowhere but is out of service. */
export function restartKinds(journal: AlarmJournal): void {
  journal.appendPermits([{ what: 'opened', permit, atMs: startMs, ...who }], startMs);
  journal.appendTightness([{ what: 'started', test, atMs: startMs, ...who }], startMs);
  journal.appendAlerts([{ what: 'came', alert, atMs: startMs }], startMs);
  const aside = {
    alarm: 'unit-8:AIR-1',
    mode: 'outOfService',
    modeSinceMs: startMs,
    modeUntilMs: startMs + day,
    modeBy: 'Ines',
    modeReason: 'sensor is out',
    interimMeasures: 'gauge read by hand each hour',
  } as const;
  const taken = { from: 'normal', to: 'normal', cause: 'takeOut', modeFrom: 'inService', ...who } as const;
  journal.append([transition({ ...aside, ...taken })], [record({ ...aside, state: 'normal', active: false })], startMs);
}
