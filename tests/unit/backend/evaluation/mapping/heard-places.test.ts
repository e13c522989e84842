import { describe, expect, it } from 'vitest';
import { HeardPlaces, momentsKept, mostPlaces } from '../../../../../backend/src/evaluation/mapping/heard-places';
import { hearPayload } from '../../../../../backend/src/evaluation/mapping/hear-payload';

const nowMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const heardOf = (text: string) =>
  hearPayload(bytes(text), nowMs).values.map(({ path, value }) => `${path.join('.')}=${String(value)}`);

describe('what is heard of a payload', () => {
  it.for([
    ['21.5', ['=21.5']],
    ['"ON"', ['=ON']],
    ['OPEN', ['=OPEN']],
    ['true', ['=true']],
    ['{"a":{"b":1,"c":"x"},"d":true,"e":null}', ['a.b=1', 'a.c=x', 'd=true']],
    ['{"list":[3,4]}', ['list.0=3', 'list.1=4']],
    ['[1,2]', []],
    ['', []],
    [`{"text":"${'x'.repeat(60)}"}`, []],
    [`${'{"a":'.repeat(9)}1${'}'.repeat(9)}`, []],
    ['{"a":NaN}', ['={"a":NaN}']],
  ] as const)('of %s is %o', ([text, expected]) => {
    expect(heardOf(text)).toEqual(expected);
  });

  it('is nothing of what is no text or too long', () => {
    expect(hearPayload(new Uint8Array([0xff, 0xfe, 0x00]), nowMs).values).toEqual([]);
    expect(hearPayload(bytes(`{"a":${' '.repeat(70_000)}1}`), nowMs).values).toEqual([]);
  });

  it('has at most two hundred values a message', () => {
    const wide = JSON.stringify(Object.fromEntries(Array.from({ length: 500 }, (_, i) => [`k${i}`, i])));
    expect(hearPayload(bytes(wide), nowMs).values).toHaveLength(200);
  });

  it('tells where the time stands, and takes no number for a time that is none', () => {
    const timeOf = (text: string) => hearPayload(bytes(text), nowMs).time;
    expect(timeOf('{"ts":"2031-05-06T07:08:00Z","v":1}')).toEqual({ path: ['ts'], form: 'iso' });
    expect(timeOf(`{"head":{"time":${nowMs / 1000}},"v":1}`)).toEqual({ path: ['head', 'time'], form: 'epochSeconds' });
    expect(timeOf(`{"timestamp":${nowMs},"v":1}`)).toEqual({ path: ['timestamp'], form: 'epochMilliseconds' });
    expect(hearPayload(bytes('{"t":34.2}'), nowMs)).toMatchObject({
      time: null,
      values: [{ path: ['t'], value: 34.2 }],
    });
  });

  it('has the unit of measure that stands beside the value', () => {
    const [value] = hearPayload(bytes('{"SupT":{"value":31,"unit":"°C"}}'), nowMs).values;
    expect(value).toMatchObject({ path: ['SupT', 'value'], unitBeside: '°C' });
  });
});

describe('places that were heard', () => {
  it('are kept with ends, words, form and series; what has a point already is not', () => {
    const places = new HeardPlaces((topic) => topic === 'mapped');
    for (let second = 0; second < 3; second += 1) {
      places.hear('new', bytes(`{"a":${second},"b":"${second === 0 ? 'ON' : 'OFF'}","c":true}`), nowMs);
      places.hear('mapped', bytes('{"a":1}'), nowMs);
      places.moment();
    }
    const [a, b, c] = places.list();
    expect(places.list()).toHaveLength(3);
    expect(a).toMatchObject({ path: ['a'], form: 'number', least: 0, most: 2, count: 3 });
    expect([...(a?.series ?? [])]).toEqual([0, 1, 2]);
    expect(b).toMatchObject({ form: 'word', words: ['ON', 'OFF'] });
    expect(c?.form).toBe('yesNo');
  });

  it('have a gap where nothing came, and lose the oldest moment first', () => {
    const places = new HeardPlaces(() => false);
    places.hear('x', bytes('0'), nowMs);
    for (let i = 1; i <= momentsKept + 1; i += 1) {
      places.moment();
      if (i !== 2) places.hear('x', bytes(String(i)), nowMs);
    }
    const series = [...(places.list()[0]?.series ?? [])];
    expect([series.length, series[0], series[1], series.at(-1)]).toEqual([momentsKept, 1, Number.NaN, momentsKept]);
  });

  it('are bounded: what comes at further places is counted and not kept', () => {
    const places = new HeardPlaces(() => false);
    for (let i = 0; i < mostPlaces + 50; i += 1) places.hear(`topic/${i}`, bytes('1'), nowMs);
    places.hear('y'.repeat(400), bytes('1'), nowMs);
    places.hear('topic/0', bytes('2'), nowMs);
    expect(places.list()).toHaveLength(mostPlaces);
    expect(places.leftOut()).toBe(51);
    expect(places.list()[0]).toMatchObject({ count: 2, most: 2 });
  });
});
