import type { Explanation } from '@ebbline/shared/contract/explanation';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { FakeServer } from './fixtures/fake-feed';
import type { JudgedUnit } from './fixtures/judged-unit';
import { judgedUnit } from './fixtures/judged-unit';
import { plain } from './fixtures/loop-shown';
import { openPage } from './fixtures/mount-page';

async function show(address: string, { frame, site }: JudgedUnit): Promise<VueWrapper> {
  const server = new FakeServer();
  const { page } = await openPage(server, address, {}, site);
  server.connect();
  server.send(frame);
  await flushPromises();
  // Long groups of points are folded away until they are asked for.
  for (const group of page.findAll('.group-row button[aria-expanded=false]')) await group.trigger('click');
  return page;
}

/** A printed number and where it leads: `value` to its grounds, `trend` to its history; null: nowhere. */
interface Way {
  readonly said: string;
  readonly value: string | null;
  readonly trend: string | null;
}

/** In the table of all points the name of a measured one opens its trend. */
const inTable = (number: Element): string | null =>
  number.closest('tr:has(.trend-button)')?.getAttribute('data-testid')?.replace('point-', '') ?? null;

function wayOf(number: Element): Way {
  const part = number.closest('tr, .fact, .figure, .branch-figures > div, .branch-flow, .server, li, section');
  const query = new URLSearchParams((number.closest('a')?.getAttribute('href') ?? '').split('?')[1] ?? '');
  return {
    said: plain(`${number.textContent ?? ''} of ${part?.textContent ?? ''}`).slice(0, 120),
    value: query.get('value'),
    trend: query.get('points')?.split(':')[1] ?? inTable(number),
  };
}

const numbers = 'main .quantity, main .heat-text, main .along-the-path .value, main .along-the-path .gap-words';

/** They stand beside the power whose uncertainty they are, and are on no screen. */
const isBesideItsPower = /^(heatRemoved|facilityHeat|chipPower)Uncertainty$/;

/** One unit of the demo site of each plant shape; that of shape a has all the sensors there can be. */
describe.for([
  ['a', 'N3'],
  ['b', 'S6'],
  ['c', 'S7'],
] as const)('on the screens of a unit of shape %s', ([shape, id]) => {
  let unit: JudgedUnit;
  let ways: readonly Way[];
  beforeAll(async () => {
    unit = judgedUnit(id, 75);
    const page = await show(`/units/${id}`, unit);
    ways = page.findAll(numbers).map(({ element }) => wayOf(element));
    page.unmount();
  }, 120_000);
  afterAll(() => void vi.unstubAllGlobals());

  it('every number on Loop leads on: one that is worked out to its grounds, a measured one to its trend', () => {
    expect(unit.site.units.find((one) => one.id === id)?.shape).toBe(shape);
    expect(ways.length).toBeGreaterThan(100);
    const kinds = new Map(unit.frame.points.map((point) => [point.id, point.kind]));
    const wrong = ways.filter(({ value, trend }) =>
      value === null ? trend === null || kinds.get(trend) === 'derived' : kinds.get(value) !== 'derived',
    );
    expect(wrong.map(({ said }) => said)).toEqual([]);
  });

  it('every value that is worked out opens to its equation, its source, what goes into it, and how sure it is', () => {
    const opened = new Set(ways.flatMap(({ value }) => value ?? []));
    const known = unit.frame.points.filter(({ kind, value }) => kind === 'derived' && value !== null);
    const silent = known.filter((point) => !opened.has(point.id) && !isBesideItsPower.test(point.id));
    expect(silent.map((point) => point.id)).toEqual([]);
    const bare = [...opened].filter((point) => !isWhole(unit.explanation(point)));
    expect(bare).toEqual([]);
  });
});

function isWhole(explained: Explanation): boolean {
  const { reading, formula, source, inputs, siteFigures, budget } = explained;
  const grounded = formula !== null && formula !== '' && source !== null && inputs.length + siteFigures.length > 0;
  // Nought of a share of nought has no parts.
  const sure = reading.expandedUncertainty === null || reading.expandedUncertainty === 0 || budget.length > 0;
  return grounded && sure;
}
