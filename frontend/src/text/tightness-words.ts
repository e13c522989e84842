import type {
  TightnessEnd,
  TightnessResult,
  TightnessSteadiness,
  TightnessTest,
  TightnessVerdict,
} from '@ebbline/shared/contract/tightness-test';
import { formatQuantity, inWords } from './format-quantity';

export const verdictWords: { readonly [V in TightnessVerdict]: string } = {
  passes: 'passes',
  fails: 'fails',
  notDecided: 'not decided',
};

export const steadinessWords: { readonly [S in TightnessSteadiness]: string } = {
  tooEarly: 'too early to tell whether the rise is steady',
  steady: 'the rise is steady',
  falling: 'the rise slows down, as where water or pockets give off gas: its mean is no leak rate',
  growing: 'the rise grows faster: its mean is no leak rate',
};

export const tightnessEndWords: { readonly [E in TightnessEnd]: string } = {
  completed: 'the planned time is over',
  endedByPerson: 'ended by a person',
  sourceStarted: 'broken off: a vacuum source started',
  flowStarted: 'broken off: water flowed',
  levelJumped: 'broken off: the level jumped',
  inputBad: 'broken off: a sensor that it needs went bad',
  configuration: 'broken off: the site file was changed',
  interrupted: 'broken off: the program was stopped meanwhile',
};

const litres = (freeAir: number, uncertainty: number | null): string =>
  inWords(formatQuantity(freeAir, 'freeAirFlow', { uncertainty, finer: 1 }));

/** What comes in, with the interval in which it lies. */
export const sayLeak = ({ freeAir, expandedUncertainty }: TightnessResult): string =>
  litres(freeAir, expandedUncertainty);

export const sayLimit = ({ acceptanceLimit }: Pick<TightnessTest, 'acceptanceLimit'>): string =>
  litres(acceptanceLimit, null);

/** `0.12 to 0.31 L/min free air` */
export function sayInterval({ freeAir, expandedUncertainty }: TightnessResult): string {
  const low = formatQuantity(freeAir - expandedUncertainty, 'freeAirFlow', { finer: 1 });
  return `${low.number} to ${litres(freeAir + expandedUncertainty, null)}`;
}
