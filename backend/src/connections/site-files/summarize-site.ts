import { widerThanQuiet } from '../../evaluation/site/check-fittings';
import { Origin, type CompiledSite } from '../../evaluation/site/compiled-site';

const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

const singular = { branches: 'branch', servers: 'server', plates: 'plate', tanks: 'tank' } as const;

/** What was understood of a site file, in one paragraph. */
export function summarizeSite(site: CompiledSite): string {
  const { slots } = site;
  const ofOrigin = (origin: number): number => slots.measured.reduce((sum, one) => sum + (one === origin ? 1 : 0), 0);
  const [measured, byHand] = [ofOrigin(Origin.measured), ofOrigin(Origin.byHand)];
  const halls = site.halls.map((hall) => `${hall.name} (${counted(hall.units.length, 'unit')})`).join(', ');
  const noAccuracy = slots.accuracyAbsolute.reduce(
    (sum, width, slot) => sum + (slots.measured[slot] === 1 && Number.isNaN(width) ? 1 : 0),
    0,
  );
  const noBarometer = site.halls.filter((hall) => hall.slot.ambientPressure < 0).map((hall) => hall.name);
  const loops = site.loops.filter((loop) => loop.units.length > 1);
  const parts = (['branches', 'servers', 'plates', 'tanks'] as const)
    .map((kind) => [site.units.reduce((sum, unit) => sum + unit[kind].length, 0), kind] as const)
    .filter(([count]) => count > 0);
  const wideMains = site.units
    .flatMap(({ branches }) => branches)
    .filter(({ mainBoreM }) => widerThanQuiet(mainBoreM)).length;
  const notCommissioned = site.units.filter(({ design }) => design.commissioned.on === null).length;
  return [
    `${site.name}${site.demo && !/demo/i.test(site.name) ? ' (demo)' : ''}, ${site.altitudeM} m, ${site.timeZone}: ${counted(site.halls.length, 'hall')}: ${halls}.`,
    `${counted(site.units.length, 'unit')}, ${counted(site.gateways.length, 'gateway')}, ${counted(measured, 'measured point')} and ${ofOrigin(Origin.derived)} derived on ${counted(site.topics.size, 'topic')} through ${counted(site.subscriptions.length, 'subscription')}.`,
    byHand > 0 ? `${counted(byHand, 'point')} that people type.` : '',
    parts.length > 0
      ? `In them: ${parts.map(([count, kind]) => counted(count, singular[kind], kind)).join(', ')}.`
      : '',
    ...loops.map((loop) => `Loop ${loop.name}: ${loop.units.length} units, ${loop.unitsNeeded} needed.`),
    wideMains > 0
      ? `A cut of the rack's own hose lets water down at ${counted(wideMains, 'branch', 'branches')} whatever the pressure (wider than about 8.5 mm): plan it as a spill.`
      : '',
    notCommissioned > 0
      ? `${counted(notCommissioned, 'unit')} without a commissioning record: nothing is judged against clean and tight.`
      : '',
    noAccuracy > 0
      ? `${counted(noAccuracy, 'point')} without a stated accuracy: what is derived from them has no uncertainty.`
      : '',
    noBarometer.length > 0
      ? `No barometer in ${noBarometer.join(', ')}: ambient pressure is taken from the altitude and marked as estimated.`
      : '',
  ]
    .filter((line) => line !== '')
    .join(' ');
}
