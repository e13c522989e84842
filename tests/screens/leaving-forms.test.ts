import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import type { Component } from 'vue';
import ActForm from '../../frontend/src/components/ActForm.vue';
import TightnessForm from '../../frontend/src/components/TightnessForm.vue';
import ChangeForm from '../../frontend/src/screens/limits/ChangeForm.vue';
import AddPersonForm from '../../frontend/src/screens/setup/AddPersonForm.vue';
import AddTokenForm from '../../frontend/src/screens/setup/AddTokenForm.vue';
import ReasonForm from '../../frontend/src/screens/setup/ReasonForm.vue';
import { anEntry } from './fixtures/alarm-management';
import { aSite } from './fixtures/builders';

const limits = { one: anEntry('FLOW-3'), site: aSite(), zone: 'UTC', unit: 'e7', taken: null, changes: null };
const forms: readonly (readonly [name: string, form: Component, props: object])[] = [
  ['of any action', ActForm, { label: 'Write a note', verb: 'Write', ready: true }],
  ['of a pressure-rise test', TightnessForm, { unitName: 'E7', cautions: [] }],
  ['of a setting', ChangeForm, limits],
  ['of a person', AddPersonForm, {}],
  ['of a token', AddTokenForm, { demo: false }],
  ['that asks why', ReasonForm, { verb: 'Block', about: 'Ines' }],
];

describe('a form', () => {
  it.each(forms)('%s is left by Escape, but not while the server has not answered', async (_name, form, props) => {
    const escape = async (busy: boolean): Promise<number> => {
      const shown = mount(form, { props: { who: 'Ines', problem: null, busy, ...props } });
      await shown.get('form').trigger('keydown', { key: 'Escape' });
      const left = shown.emitted('cancel')?.length ?? 0;
      shown.unmount();
      return left;
    };
    expect([await escape(false), await escape(true)]).toEqual([1, 0]);
  });
});
