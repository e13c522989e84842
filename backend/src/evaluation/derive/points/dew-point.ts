import { dewPoint, dewPointByHumidity, dewPointByTemperature } from '@ebbline/shared/fluid-properties/moist-air';
import { combine2, expanded } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import type { CompiledHall, CompiledSite } from '../../site/compiled-site';
import type { SlotState } from '../../slots/slot-state';
import { InputTally } from '../input-tally';
import { standardUncertainty } from '../standard-uncertainty';
import { noBudget, part, type BudgetHolder } from '../uncertainty-budget';
import { writeDerived } from '../write-derived';

const tally = new InputTally();

/** Dew point of the hall's air, °C. */
export function deriveDewPoint(
  site: CompiledSite,
  state: SlotState,
  hall: CompiledHall,
  nowMs: number,
  asked: BudgetHolder = noBudget,
): void {
  const { temperature: temperatureSlot, humidity: humiditySlot } = hall.slot;
  tally.begin();
  tally.budget = asked.budget;
  const temperature = celsius(tally.take(state, temperatureSlot));
  const humidity = saturated(tally.take(state, humiditySlot));
  const u = combine2(
    part(
      asked,
      'hall.temperature',
      dewPointByTemperature(temperature, humidity) * standardUncertainty(site.slots, state, temperatureSlot),
    ),
    part(
      asked,
      'hall.humidity',
      dewPointByHumidity(temperature, humidity) * standardUncertainty(site.slots, state, humiditySlot),
    ),
  );
  writeDerived(state, hall.slot.dewPoint, nowMs, tally, dewPoint(temperature, humidity), expanded(u), -1);
}

/** In saturated air a sensor may read some per cent above 1; that is when the dew point matters most. */
const saturated = (humidity: number): number => (humidity > 1 && humidity <= 1.05 ? 1 : humidity);
