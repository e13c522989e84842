import { kelvinDifference, type Celsius, type KelvinDifference } from '../units/quantity';

/** How far the coldest wetted surface is above the dew point of the room's air; at 0 K it begins to drip. */
export const dewPointMargin = (coldestSurface: Celsius, dewPoint: Celsius): KelvinDifference =>
  kelvinDifference(coldestSurface - dewPoint);
