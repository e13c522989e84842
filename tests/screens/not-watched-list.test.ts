import { mount, RouterLinkStub } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import NotWatchedList from '@ebbline/frontend/src/screens/setup/NotWatchedList.vue';

const filter = { entry: 'FIL-1', title: 'Filter loaded', lacks: ['Filter pressure drop'] };
const pump = { entry: 'PUMP-3', title: 'Pump wearing', lacks: [] };
const list = (...entries: (typeof filter)[]) =>
  mount(NotWatchedList, { props: { entries }, global: { stubs: { RouterLink: RouterLinkStub } } });

describe('the alarms that a unit can not raise', () => {
  it('are named with what is not measured, or that a figure is missing, and lead to why they exist', () => {
    const listed = list(filter, pump);
    expect(listed.get('summary').text()).toBe('2 alarms of the catalogue that this unit can not raise');
    const [first, second] = listed.findAll('li').map((one) => one.text().replace(/\s+/g, ' '));
    expect(first).toBe('FIL-1 Filter loaded · not measured: Filter pressure drop');
    expect(second).toMatch(/^PUMP-3 Pump wearing · for another kind of plant, or a figure/);
    expect(listed.getComponent(RouterLinkStub).props('to')).toEqual({ name: 'limits', params: { entry: 'FIL-1' } });
  });

  it('are not spoken of where there are none', () => {
    expect(list().find('details').exists()).toBe(false);
    expect(list(pump).get('summary').text()).toContain('One alarm of the catalogue');
  });
});
