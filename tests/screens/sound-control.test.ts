import { mount, type VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import SoundControl from '../../frontend/src/components/SoundControl.vue';

let control: VueWrapper | null = null;
afterEach(() => control?.unmount());

function open(props: { readonly blocked: boolean; readonly sounding: 1 | null }): VueWrapper {
  control = mount(SoundControl, { props: { volume: 'low', notification: 'off', ...props }, attachTo: document.body });
  return control;
}

describe('the button of the sound', () => {
  it('keeps who stands on it by keyboard when the browser lets sound be heard', async () => {
    const sound = open({ blocked: true, sounding: 1 });
    sound.get<HTMLElement>('[data-testid=sound-blocked]').element.focus();
    await sound.setProps({ blocked: false });
    expect(document.activeElement).toBe(sound.get('[data-testid=silence]').element);
  });

  it('hands who stands on it to the choice beside it when it goes', async () => {
    const sound = open({ blocked: true, sounding: null });
    sound.get<HTMLElement>('[data-testid=sound-blocked]').element.focus();
    await sound.setProps({ blocked: false });
    await Promise.resolve();
    expect(document.activeElement).toBe(sound.get('summary').element);
  });

  it('silences by a reader’s click what sounds later, after a press whose click never came', async () => {
    const sound = open({ blocked: true, sounding: null });
    await sound.get('button').trigger('pointerdown');
    await sound.setProps({ blocked: false });
    await sound.setProps({ sounding: 1 });
    await sound.get('[data-testid=silence]').trigger('click');
    expect(sound.emitted('silence')).toHaveLength(1);
  });

  it('silences nothing by the press that lets sound be heard', async () => {
    const sound = open({ blocked: true, sounding: 1 });
    await sound.get('button').trigger('pointerdown');
    await sound.setProps({ blocked: false });
    await sound.get('[data-testid=silence]').trigger('click');
    expect(sound.emitted('silence')).toBeUndefined();
    await sound.get('[data-testid=silence]').trigger('click');
    expect(sound.emitted('silence')).toHaveLength(1);
  });
});
