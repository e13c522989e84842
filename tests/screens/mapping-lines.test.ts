import type { HeardPlaceShown } from '@ebbline/shared/contract/mapping';
import { mount, type VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import HeardPlace from '../../frontend/src/screens/setup/HeardPlace.vue';
import MappingLines from '../../frontend/src/screens/setup/MappingLines.vue';

let shown: VueWrapper | null = null;
afterEach(() => shown?.unmount());

const flow = "loop.flow: { topic: 'works/e7', path: ['FT'], unit: 'L/min' }";
const heat = "heatRemoved: { topic: 'works/e7', path: ['Q'], unit: 'kW' }";
const linesWith = (...lines: readonly string[]): string =>
  lines.length === 0 ? '' : ['units:', '  e7:', '    points:', ...lines.map((line) => `      ${line}`), ''].join('\n');

describe('lines for the site file that were edited by hand', () => {
  it('say which choices are not in them, until they hold them or are written anew', async () => {
    const page = mount(MappingLines, { props: { lines: linesWith(flow), allowed: true } });
    shown = page;
    const box = page.get('[name=lines]');
    const said = () => page.find('[data-testid=mapping-edited]');
    await page.setProps({ lines: linesWith() });
    expect(said().exists()).toBe(false);
    await page.setProps({ lines: linesWith(flow) });
    await box.setValue(`# by hand\n${linesWith(flow)}`);
    expect(said().exists()).toBe(false);
    await page.setProps({ lines: linesWith(flow, heat) });
    expect(said().text()).toContain('edited by hand');
    expect(said().text()).toContain(`Chosen since and not in it: e7 ${heat}`);
    await box.setValue(`# by hand\n${linesWith(flow, heat)}`);
    expect(said().exists()).toBe(false);
    await page.setProps({ lines: linesWith(heat) });
    expect(said().text()).toContain(`Left out since and still in it: e7 ${flow}`);
    const anew = page.findAll('button').find((one) => one.text() === 'As chosen again');
    await anew?.trigger('click');
    expect(said().exists()).toBe(false);
    expect((box.element as HTMLTextAreaElement).value).toBe(linesWith(heat));
  });
});

describe('a proposal for a place', () => {
  it('tells its unit by name, with its id beside', () => {
    const place: HeardPlaceShown = {
      ...{ topic: 'works/e7', path: ['FT'], count: 20, latest: '341', seen: '330 to 350' },
      proposals: [
        {
          ...{ kind: 'unit', holder: 'e7', point: 'loop.flow', title: 'Loop flow', grade: 'possible' },
          ...{ reasons: [], line: flow, needs: [] },
        },
      ],
    };
    shown = mount(HeardPlace, { props: { place, chosen: new Map(), nameOf: () => 'East 7' } });
    expect(shown.get('option:last-child').text()).toBe('Loop flow of East 7 (e7), loop.flow: possible');
    expect(shown.text()).toContain('Loop flow of East 7?');
  });
});
