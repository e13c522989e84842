/** Valid messages of the small site, one or more of every kind, at a second. The seeds that the fuzz mutates. */
export interface FuzzMessage {
  readonly topic: string;
  readonly payload: Uint8Array;
  readonly retained: boolean;
}

const text = (topic: string, payload: string, retained = false): FuzzMessage => ({
  topic,
  payload: Buffer.from(payload),
  retained,
});

export const unitOneTopic = 'small/m1/telemetry';

/** What unit one sends at a second: one JSON object. Numbers move, so that nothing is a repetition. */
export function unitOneObject(atMs: number): Record<string, unknown> {
  const wave = Math.sin(atMs / 7000);
  return {
    time: new Date(atMs).toISOString(),
    quality: 'good',
    supply: { t: 35 + wave, p: -27.3 + wave },
    return: { t: 44 + wave },
    facility: { t: 30 + wave / 10 },
    tank: { p: 74 + wave / 10, level: 50 + wave },
    separator: { p: 32 + wave / 10 },
    flow: 346 + wave,
    exhaust: 3 + wave / 10,
    vacuum: { hz: 20 + wave },
    pump: { run: true },
    leak: 'dry',
    mode: 'RUN',
    racks: { r1: { flow: 43 + wave, t: 44 }, r2: { flow: 42 + wave, t: 44.1 } },
    chips: { p1: { t: 51 + wave, w: 300 } },
  };
}

export const unitOneMessage = (atMs: number): FuzzMessage => text(unitOneTopic, JSON.stringify(unitOneObject(atMs)));

/** Samples in one `unitOneMessage`. */
export const unitOneSamples = 19;

/** Messages of everything else: the ones that are bent and broken. */
export const otherMessages = (atMs: number): readonly FuzzMessage[] => [
  text('small/north/barometer', '1012.4'),
  text('small/north/air', '{"t":27.1,"rh":41}'),
  text('small/m2/supply/t', '95.2'),
  text('small/m2/return/t', JSON.stringify({ v: 44.2, ts: atMs })),
  text('small/m2/tank/p', '27.3'),
  text('small/m2/separator/p', JSON.stringify({ 'value.now': -20.4, 'at.s': atMs / 1000, q: true })),
  text('small/m2/flow', '91.4'),
  text('small/m2/pump/run', 'ON'),
  text('small/m2/mode', 'running', true),
  text('small/east/status', 'online', true),
];
