/** One body that crosses the HTTP border. */
export interface Example {
  readonly query?: Readonly<Record<string, string>>;
  readonly body?: unknown;
  readonly reply: unknown;
}

export const reading = {
  id: 'loop.flow',
  kind: 'measured',
  value: 0.0057667,
  unit: 'm3/s',
  time: '2031-05-06T07:08:09.250Z',
  age: 0.4,
  quality: 'good',
  reasons: [],
  expandedUncertainty: 0.0000334,
  where: null,
};

export const worstMargin = {
  ...reading,
  id: 'vacuumMarginWorst',
  kind: 'derived',
  value: 4180,
  unit: 'Pa',
  quality: 'uncertain',
  reasons: ['ambientEstimated', 'inputUncertain'],
  expandedUncertainty: null,
  where: 'floorSupply',
};

export const neverReceived = {
  ...reading,
  id: 'water.ph',
  value: null,
  unit: '1',
  time: null,
  age: null,
  quality: 'bad',
  reasons: ['notReceived'],
  expandedUncertainty: null,
};
