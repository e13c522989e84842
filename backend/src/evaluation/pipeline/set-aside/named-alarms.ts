import { pointDefinition } from '@ebbline/shared/contract/point-table';
import { catalogue, unitEntries } from '../../alarm-rules/catalogue/catalogue';
import { entryIds } from '../../alarm-rules/entry-ids';
import type { CompiledUnit } from '../../site/compiled-site';
import { partsOf } from '../part-index';
import type { PipelineState } from '../pipeline-state';
import { placeOfAlarm } from './place-of-alarm';

type Named = readonly [alarm: number, text: string];

/**
 * Every alarm of the site with all that it is looked for by, small; units that have more of the words in their name come first.
 * @param words small
 */
export function* namedAlarms(pipeline: PipelineState, words: readonly string[]): Generator<Named> {
  const { index, site } = pipeline;
  const units = site.units.map((unit, place) => {
    const text = small(unit.id, unit.name, site.halls[unit.hall]?.name);
    return { unit, place, text, has: words.filter((word) => text.includes(word)).length };
  });
  for (const { unit, place, text } of units.sort((a, b) => b.has - a.has || a.place - b.place)) {
    yield* ofUnit(pipeline, unit, place, text);
    yield* ofPoints(pipeline, unit.holder, text);
  }
  for (const hall of site.halls) yield* ofPoints(pipeline, hall.holder, small(hall.id, hall.name));
  for (let alarm = index.ofGroup(0); index.groupOf(alarm) !== null; alarm += 1) yield ofOther(pipeline, alarm);
  for (let alarm = index.ofGateway(0); alarm < index.count; alarm += 1) yield ofOther(pipeline, alarm);
}

function* ofUnit({ index }: PipelineState, unit: CompiledUnit, place: number, ofPlace: string): Generator<Named> {
  for (const [entryPlace, { id, title, per }] of unitEntries.entries()) {
    const text = `${ofPlace} ${small(id, title)}`;
    if (per === undefined) yield [index.ofUnit(place) + entryPlace, text];
    else
      for (const [part, one] of partsOf(unit, per).entries())
        yield [index.parts.of(place, entryPlace) + part, `${text} ${small(one.id, one.name)}`];
  }
}

/** INS-1 of each point that a unit or a hall holds. */
function* ofPoints({ index, site }: PipelineState, holder: number, ofPlace: string): Generator<Named> {
  for (let place = index.firstPoint[holder] ?? 0; place < (index.firstPoint[holder + 1] ?? 0); place += 1) {
    const point = site.slots.pointId[index.points[place]?.slot ?? -1] ?? '';
    const text = small('INS-1', catalogue['INS-1'].title, point, pointDefinition(point)?.title);
    yield [index.ofPoint(place), `${ofPlace} ${text}`];
  }
}

/** Of a loop, a hall, a gateway or the program. */
function ofOther(pipeline: PipelineState, alarm: number): Named {
  const { alarm: name, entry, hall } = pipeline.index.identity(alarm);
  const known = entryIds.find((id) => id === entry);
  const hallName = pipeline.site.halls.find(({ id }) => id === hall)?.name;
  const title = known === undefined ? undefined : catalogue[known].title;
  return [alarm, small(name, title, hallName, placeOfAlarm(pipeline, alarm) ?? undefined)];
}

const small = (...parts: readonly (string | undefined)[]): string =>
  parts
    .filter((part) => part !== undefined)
    .join(' ')
    .toLowerCase();
