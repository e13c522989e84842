import poor from '../../../site-templates/poor.yaml?raw';
import rich from '../../../site-templates/rich.yaml?raw';
import usual from '../../../site-templates/usual.yaml?raw';

/** Sensor sets that come with the program, by the name that `include` takes. */
export const shippedTemplates: ReadonlyMap<string, string> = new Map([
  ['rich', rich],
  ['usual', usual],
  ['poor', poor],
]);
