import { modeOf } from '../../evaluation/alarm-lifecycle/mode-facts';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { PictureScene } from './scene';

/**
 * Alarms that a person has set aside while their condition holds: no list tells them, and nothing may be called calm over them.
 * Without those that logic suppresses: of them nobody is to know.
 */
export const heldAside = (scene: Pick<PictureScene, 'setAside'>): readonly AlarmRecord[] =>
  scene
    .setAside()
    .map(({ record }) => record)
    .filter((record) => record.active && modeOf(record) !== 'suppressedByDesign');

/** A member of a picture that is left out where it would be nought. */
export const countOr = <Name extends string>(name: Name, count: number): { readonly [N in Name]?: number } =>
  count === 0 ? {} : ({ [name]: count } as { readonly [N in Name]: number });
