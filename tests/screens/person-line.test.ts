import type { PersonRow } from '@ebbline/shared/contract/people';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises, mount } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import PersonLine from '../../frontend/src/screens/setup/PersonLine.vue';
import type { Asked } from './fixtures/fake-server';
import { answerWith } from './fixtures/fake-server';

let line: VueWrapper | null = null;
afterEach(() => {
  line?.unmount();
  vi.unstubAllGlobals();
});

const ines: PersonRow = {
  id: 'p7',
  name: 'Ines',
  role: 'operator',
  enabled: true,
  by: 'password',
  waiting: false,
  addedAt: '2026-02-01T12:00:00.000Z',
  lastSignInAt: null,
};

/** The line with the form opened that shuts out, or lets in again. */
async function asking(person: PersonRow, verb: string): Promise<{ shown: VueWrapper; asked: readonly Asked[] }> {
  const asked = answerWith({ '/api/people/p7/change': { ...person, enabled: !person.enabled } });
  const shown = mount(PersonLine, { props: { person, zone: 'Europe/Berlin', own: false }, attachTo: document.body });
  line = shown;
  await shown.get('button').trigger('click');
  await shown
    .findAll('.person-asks button')
    .find((one) => one.text() === verb)
    ?.trigger('click');
  await shown.get('[name=reason]').setValue('left the house');
  return { shown, asked };
}
const send = async (shown: VueWrapper): Promise<void> => {
  await shown.get('form').trigger('submit');
  await flushPromises();
};

describe('the form that shuts a person out', () => {
  it('asks for what it was opened for, and closes once that is confirmed', async () => {
    const { shown, asked } = await asking(ines, 'Shut out');
    await send(shown);
    expect(asked.map(({ body }) => body)).toEqual([{ enabled: false, reason: 'left the house' }]);
    expect(shown.find('form').exists()).toBe(false);
    expect(shown.emitted('changed')).toHaveLength(1);
  });

  it('does not turn into its opposite where somebody else was first: it says so, and sends nothing', async () => {
    for (const [enabled, verb, says] of [
      [true, 'Shut out', 'Ines was shut out meanwhile.'],
      [false, 'Let in again', 'Ines was let in again meanwhile.'],
    ] as const) {
      const { shown, asked } = await asking({ ...ines, enabled }, verb);
      await shown.setProps({ person: { ...ines, enabled: !enabled } });
      const submit = shown.get('button[type=submit]');
      expect(submit.text()).toBe(verb);
      expect(submit.attributes('disabled')).toBeDefined();
      expect(shown.get('[role=alert]').text()).toBe(says);
      await send(shown);
      expect(asked).toEqual([]);
      expect(shown.get<HTMLInputElement>('[name=reason]').element.value).toBe('left the house');
      shown.unmount();
    }
  });

  it('opened again offers what can be done by now', async () => {
    const { shown, asked } = await asking(ines, 'Shut out');
    await shown.setProps({ person: { ...ines, enabled: false } });
    await shown.get('.cancel').trigger('click');
    await shown.get('button').trigger('click');
    await shown.findAll('.person-asks button')[1]?.trigger('click');
    expect(shown.get('button[type=submit]').text()).toBe('Let in again');
    expect(shown.find('[role=alert]').exists()).toBe(false);
    await shown.get('[name=reason]').setValue('is back');
    await send(shown);
    expect(asked.map(({ body }) => body)).toEqual([{ enabled: true, reason: 'is back' }]);
  });
});
