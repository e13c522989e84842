import type { FuzzMessage } from './valid-messages';

/** Draws numbers from a seed, alike on every machine (mulberry32, public domain, from memory). */
export function seededDraw(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

type Draw = () => number;
type Mutation = (message: FuzzMessage, draw: Draw, atMs: number) => FuzzMessage;

const pick = <Item>(items: readonly Item[], draw: Draw): Item => {
  const item = items[Math.floor(draw() * items.length)];
  if (item === undefined) throw new Error('nothing to pick from');
  return item;
};

const withText = (message: FuzzMessage, payload: string): FuzzMessage => ({
  ...message,
  payload: Buffer.from(payload),
});

const asObject = (message: FuzzMessage): Record<string, unknown> | null => {
  try {
    const value: unknown = JSON.parse(Buffer.from(message.payload).toString());
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
};

const strangeValues: readonly unknown[] = [
  null,
  'RUNAWAY',
  '12,5',
  'NaN',
  '-Infinity',
  '',
  true,
  [],
  {},
  [1],
  -0,
  1e308,
  '1e999',
  '0x1F',
  '\u0000',
  { toString: 1 },
];

const strangeTimes: readonly ((atMs: number) => unknown)[] = [
  () => null,
  () => 'yesterday',
  () => '2026-02-30T00:00:00Z',
  () => '2026-01-01T00:00:00',
  (atMs) => atMs + 3_600_000,
  (atMs) => new Date(atMs + 3_600_000).toISOString(),
  (atMs) => (atMs + 3_600_000) / 1000,
  (atMs) => new Date(atMs - 40 * 86_400_000).toISOString(),
  (atMs) => atMs - 40 * 86_400_000,
  (atMs) => (atMs - 40 * 86_400_000) / 1000,
  () => 1e300,
  () => ({}),
];

/** Each keeps to the structure of the message that it bends, so that it gets past the earlier checks. */
const mutations: readonly Mutation[] = [
  (message, draw) => ({ ...message, topic: `${message.topic}/${Math.floor(draw() * 1e9)}` }),
  (message) => ({ ...message, payload: new Uint8Array(0) }),
  (message) => withText(message, ' '.repeat(5000)),
  (message, draw) => ({ ...message, payload: Uint8Array.from(message.payload, (b) => (draw() < 0.2 ? b | 0x80 : b)) }),
  (message, draw) => ({
    ...message,
    payload: message.payload.subarray(0, Math.floor(draw() * message.payload.length)),
  }),
  (message, draw) => {
    const bytes = Uint8Array.from(message.payload);
    for (let i = 0; i < 3; i += 1) bytes[Math.floor(draw() * bytes.length)] = Math.floor(draw() * 256);
    return { ...message, payload: bytes };
  },
  (message, draw) => withText(message, '[{"a":'.repeat(5 + Math.floor(draw() * 200))),
  (message, draw) => withText(message, '['.repeat(100 + Math.floor(draw() * 3000))),
  (message, draw) =>
    withText(message, pick(['7', 'null', '[1,2]', '"text"', 'true', '1e999', '-.', '{}', '{"a"}'], draw)),
  (message, draw) => withText(message, pick(['12 kPa', 'MAYBE', 'NaN', '0x10', '1.2.3', '--1', '1,5', '1e999'], draw)),
  (message, draw) => {
    const object = asObject(message);
    if (object === null || Object.keys(object).length === 0) return message;
    const key = pick(Object.keys(object), draw);
    if (draw() < 0.3) Reflect.deleteProperty(object, key);
    else object[key] = pick(strangeValues, draw);
    return withText(message, JSON.stringify(object));
  },
  (message, draw, atMs) => {
    const object = asObject(message);
    const key = object === null ? undefined : ['ts', 'at.s', 'time'].find((name) => name in object);
    if (object === null || key === undefined) return message;
    if (draw() < 0.2) Reflect.deleteProperty(object, key);
    else object[key] = pick(strangeTimes, draw)(atMs);
    return withText(message, JSON.stringify(object));
  },
  (message) => {
    const written = Buffer.from(message.payload).toString();
    return withText(message, written.replace(/-?\d+(\.\d+)?/, '1e400'));
  },
  (message) => withText(message, `{"__proto__":{"v":1},"constructor":1,"v":"44"}`),
  (message) => ({ ...message, retained: !message.retained }),
];

/** One to three mutations one upon the other. */
export function mutate(message: FuzzMessage, draw: Draw, atMs: number): FuzzMessage {
  let bent = message;
  const times = 1 + Math.floor(draw() * 3);
  for (let i = 0; i < times; i += 1) bent = pick(mutations, draw)(bent, draw, atMs);
  return bent;
}
