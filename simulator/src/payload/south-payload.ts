import { tell, type PayloadRow } from './payload-row';

/** South hall: another maker's gateway. Flat keys with dots in them, bar absolute, mbar gauge, m³/h, kW. */
const flat = (point: string, tellIt: PayloadRow['tell']): PayloadRow => ({
  point,
  path: ['values', point.replace('branch.*', 'branch.{branch}').replace('plate.*', 'plate.{plate}')],
  tell: tellIt,
});

export const southPayload: readonly PayloadRow[] = [
  flat('supply.temperature', tell.celsius),
  flat('supply.pressure', tell.mbarGauge),
  flat('return.temperature', tell.celsius),
  flat('return.pressure', tell.mbarGauge),
  flat('loop.flow', tell.m3PerHour),
  flat('facility.supply.temperature', tell.celsius),
  flat('facility.return.temperature', tell.celsius),
  flat('facility.flow', tell.m3PerHour),
  flat('supplyTank.pressure', tell.bar),
  flat('supplyTank.level', tell.metre),
  flat('separator.pressure', tell.bar),
  flat('separator.level', tell.metre),
  flat('filter.pressureDrop', tell.mbar),
  flat('pump.speed', tell.percent),
  flat('pump.power', tell.kW),
  flat('pump.running', tell.yesNo),
  flat('vacuum.speed', tell.percent),
  flat('vacuum.running', tell.yesNo),
  flat('vacuum.exhaustFlow', tell.m3PerHourFreeAir),
  flat('valve.command', tell.percent),
  flat('valve.position', tell.percent),
  flat('unit.power', tell.kW),
  flat('water.found', tell.yesNo),
  flat('branch.*.flow', tell.m3PerHour),
  flat('branch.*.return.temperature', tell.celsius),
  flat('branch.*.return.pressure', tell.bar),
  flat('branch.*.power', tell.kW),
  flat('plate.*.temperature', tell.wholeCelsius),
  flat('plate.*.power', tell.watt),
];
