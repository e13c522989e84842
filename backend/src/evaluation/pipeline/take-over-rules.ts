import { unitEntryPlace } from '../alarm-rules/entry-ids';
import { cellsOfRule } from '../alarm-rules/rule-memory';
import type { CompiledUnit } from '../site/compiled-site';
import { copyColumns } from './copy-columns';
import type { PipelineState } from './pipeline-state';
import { placeRules } from './remembered/remembered-parts';
import type { SiteMaps } from './site-maps';

/** What rules remember goes on by alarm; not of a rule that keeps branches or plates by their place, in a unit where those have changed. */
export function takeOverRules(before: PipelineState, now: PipelineState, { alarms, units }: SiteMaps): void {
  copyColumns(before.memory, now.memory, alarms);
  now.site.units.forEach((unit, place) => {
    const was = before.site.units[units.before[place] ?? -1];
    if (was === undefined || partsOf(was) === partsOf(unit)) return;
    for (const entry of placeRules) forget(now, now.index.ofUnit(place) + unitEntryPlace[entry]);
  });
}

const partsOf = ({ branches, plates }: CompiledUnit): string =>
  JSON.stringify([branches.map(({ id }) => id), plates.map(({ id }) => id)]);

function forget({ memory }: PipelineState, alarm: number): void {
  for (let cell = 0; cell < cellsOfRule; cell += 1) memory.set(alarm, cell, Number.NaN);
}
