import { longAir } from './long-air';
import type { LongExpectation } from './long-expectation';
import { longHeat } from './long-heat';
import { longWater } from './long-water';

export const longExpectations: readonly LongExpectation[] = [...longAir, ...longHeat, ...longWater];
