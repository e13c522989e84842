/** A further key of a command, its values in words. */
export interface Choice {
  readonly key: string;
  readonly title: string;
  readonly values: readonly string[];
  /** Taken where the command leaves it out. */
  readonly usual: string;
  /** The values are examples: any number from the first to the last is taken. */
  readonly anyNumber?: boolean;
}

/** Something that the simulator can be told to do, as a screen lists it. */
export interface ScenarioKind {
  readonly id: string;
  readonly title: string;
  readonly kind: 'fault' | 'operation';
  /** What happens in the plant, in one sentence. */
  readonly about: string;
  /** Where it can happen: ids of units, or the site's. */
  readonly units: readonly string[];
  readonly needsBranch: boolean;
  readonly choices: readonly Choice[];
}

/** Stands where a unit's id does, for what comes over the whole site. */
export const wholeSite = 'site';

export const sizeChoice: Choice = {
  key: 'size',
  title: 'size',
  values: ['small', 'usual', 'large'],
  usual: 'usual',
};

/** An opening by the air that it lets in while its flow is sonic, in place of its bore. */
export const freeAirChoice: Choice = {
  key: 'freeLPerMin',
  title: 'free air, L/min',
  values: ['asUsual', '5', '10', '20', '30', '45', '60', '100', '160'],
  usual: 'asUsual',
};

export const directionChoice: Choice = {
  key: 'direction',
  title: 'which way',
  values: ['rise', 'fall'],
  usual: 'rise',
};
