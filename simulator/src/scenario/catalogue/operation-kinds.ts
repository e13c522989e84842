import { operationKinds, type OperationKind } from '../../plant/operations/operation';
import { operationTable } from '../../plant/operations/operation-table';
import { ageingParts } from '../ageing';
import type { FleetUnit } from '../demo-fleet';
import { handEntries } from '../hand-entries';
import { freeAirChoice, type Choice, type ScenarioKind } from './scenario-kind';

const litres: Choice = {
  key: 'litres',
  title: 'litres of treated water',
  values: ['missing', '1', '2', '5', '10', '20', '50', '100'],
  usual: 'missing',
};

const choicesOf: Partial<Record<OperationKind, readonly Choice[]>> = {
  topUp: [litres],
  fill: [litres],
  openHose: [freeAirChoice],
};

const about: Readonly<Record<OperationKind, string>> = {
  start: 'vacuum, then flow, then facility water, then load',
  stop: 'load off, plates cool, flow off; the vacuum stays on',
  standby: 'stopped under vacuum, ready to start',
  tightnessTest: 'evacuated and shut for half an hour: the rise of pressure is the leak',
  fill: 'treated water is drawn in under vacuum',
  purge: 'water moves without load until it brings no more gas',
  drain: 'both tanks are emptied down to a tenth',
  topUp: 'treated water into the running unit, through the meter',
  vent: 'for work on the vessels, under a permit: load off, plates cool, flow off, then both tanks up to ambient pressure',
  evacuate: 'a vented unit is shut and brought back under vacuum',
  isolateBranch: 'valves shut on supply and return: a blind pocket; take its load off first',
  restoreBranch: 'the branch’s valves open again',
  openHose: 'hose change under a permit: one server’s return hose is off',
  closeHose: 'the new hose is on',
};

/** Work that undoes another: what `repair` means. */
export const opposites: Partial<Record<OperationKind, OperationKind>> = {
  start: 'stop',
  stop: 'start',
  standby: 'start',
  vent: 'evacuate',
  isolateBranch: 'restoreBranch',
  openHose: 'closeHose',
};

/** Orders that are set at once. Each choice is a number between its first and last value, or one of its words. */
export const settingKinds = [
  'setSupplyTemperature',
  'setSeparator',
  'setSupplyTank',
  'pressureReference',
  'facilityValve',
] as const;
export type SettingKind = (typeof settingKinds)[number];

const settings: Readonly<Record<SettingKind, { title: string; about: string; choice: Choice }>> = {
  setSupplyTemperature: {
    title: 'set point: supply temperature',
    about: 'the supply temperature that the facility valve holds',
    choice: number('value', '°C', ['20', '30', '32', '35', '40', '45'], '35'),
  },
  setSeparator: {
    title: 'set point: separator',
    about: 'the pressure that the vacuum source holds',
    choice: number('value', 'kPa absolute', ['15', '20', '28', '32', '36', '60'], '32'),
  },
  setSupplyTank: {
    title: 'set point: supply pressure',
    about: 'the pressure of the supply tank; where a pump pushes into the loop, of its header',
    choice: number('value', 'kPa absolute', ['40', '65', '70', '74', '78', '100'], '74'),
  },
  pressureReference: {
    title: 'pressure set points count from',
    about: 'absolute: they stand still when the barometer moves; gauge: they follow it',
    choice: { key: 'value', title: 'reference', values: ['absolute', 'gauge'], usual: 'absolute' },
  },
  facilityValve: {
    title: 'facility valve by hand',
    about: 'the facility valve is held by hand, or given back to its controller',
    choice: {
      key: 'value',
      title: 'opening, %',
      values: ['automatic', '0', '25', '50', '75', '100'],
      usual: 'automatic',
    },
  },
};

function number(key: string, title: string, values: readonly string[], usual: string): Choice {
  return { key, title, values, usual, anyNumber: true };
}

const parts: Choice = { key: 'part', title: 'what ages', values: ageingParts, usual: 'filter' };
const pace: Choice = number(
  'timesAsFast',
  'times as fast as life',
  ['0', '1', '60', '1440', '86400', '1000000'],
  '1440',
);

export function operationsOf(fleet: readonly FleetUnit[]): readonly ScenarioKind[] {
  const units = fleet.map(({ id }) => id);
  const plain = { kind: 'operation', units, needsBranch: false } as const;
  return [
    ...operationKinds.map((operation): ScenarioKind => ({
      ...plain,
      id: operation,
      title: operationTable[operation].title,
      about: about[operation],
      needsBranch: operationTable[operation].inRack,
      choices: choicesOf[operation] ?? [],
    })),
    ...settingKinds.map((id): ScenarioKind => {
      const { title, about: what, choice } = settings[id];
      return { ...plain, id, title, about: what, choices: [choice] };
    }),
    {
      ...plain,
      id: 'age',
      title: 'slow change',
      about: 'a part ages at a chosen pace from now on; 0 lets it stand where it is',
      choices: [parts, pace],
    },
    { ...plain, id: 'renew', title: 'part renewed', about: 'a part is as new again', choices: [parts] },
    ...handKinds(fleet),
  ];
}

/** Readings by hand, where the site file has a topic for them. */
function handKinds(fleet: readonly FleetUnit[]): readonly ScenarioKind[] {
  const entries = handEntries.filter(({ unit }) => fleet.some(({ id }) => id === unit));
  if (entries.length === 0) return [];
  const values = [...new Set(entries.map(({ point }) => point))];
  return [
    {
      id: 'handEntry',
      title: 'reading by hand',
      kind: 'operation',
      about: 'somebody reads a hand-held meter and sends what it says as a bare number',
      units: [...new Set(entries.map(({ unit }) => unit))],
      needsBranch: false,
      choices: [
        { key: 'point', title: 'what is read', values, usual: values[0] ?? '' },
        number('value', 'reading', ['0', '7', '8.6', '12.5', '20', '40', '2000'], '12.5'),
      ],
    },
  ];
}
