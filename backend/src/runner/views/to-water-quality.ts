import { waterParameters } from '@ebbline/shared/contract/water-parameters';
import type { WaterParameterState, WaterQuality } from '@ebbline/shared/contract/water-quality';
import { molybdateOfMolybdenum } from '@ebbline/shared/fluid-properties/molybdate';
import { bandInForceOf } from '../../evaluation/alarm-rules/water-band-in-force';
import { usable } from '../../evaluation/alarm-rules/judge-context';
import { bandWord, isOverdue, slotInForce } from '../../evaluation/alarm-rules/water-in-force';
import type { CompiledUnit } from '../../evaluation/site/compiled-site';
import type { CompiledWaterParameter } from '../../evaluation/site/compiled-water';
import type { Pipeline } from '../../evaluation/pipeline/pipeline';
import type { HandRecord } from '../../evaluation/pipeline/hand-record';
import type { Scene } from './scene';
import { finiteOrNull, timeText } from './time-text';
import { toHandEntry } from './to-hand-entry';
import { unitAt } from './to-loop-line';
import { toReading } from './to-reading';

/** The water of a unit, parameter by parameter: what counts, its band, and when a person is to look again. */
export function toWaterQuality({ pipeline }: Scene, unitIndex: number, nowMs: number): WaterQuality {
  const unit = unitAt(pipeline, unitIndex);
  const typed = pipeline.handEntries(unit.id);
  return {
    unit: unit.id,
    time: timeText(nowMs) ?? new Date(0).toISOString(),
    parameters: unit.water.parameters.map((parameter) => toParameter(pipeline, unit, parameter, typed, nowMs)),
  };
}

function toParameter(
  pipeline: Pipeline,
  unit: CompiledUnit,
  parameter: CompiledWaterParameter,
  typed: readonly HandRecord[],
  nowMs: number,
): WaterParameterState {
  const { id, sensorSlot, handSlot, dueMs, lastCalibration } = parameter;
  const { site, state } = pipeline;
  const slot = slotInForce(state, parameter);
  const value = usable(state, slot);
  const band = bandInForceOf(unit, parameter);
  const shown = showing(unit, parameter);
  const last = typed.find(
    (record) => record.parameter === id && record.value !== null && pipeline.handCorrector(record.id) === null,
  );
  const byHand = handSlot >= 0;
  return {
    parameter: id,
    title: waterParameters[id].title,
    unit_of_measure: waterParameters[id].unit,
    shownAs: id === 'molybdate' ? unit.water.molybdateShownAs : null,
    referenceTemperature: id === 'conductivity' ? 25 : null,
    origin: Number.isNaN(value) ? 'none' : slot === handSlot ? 'hand' : 'sensor',
    value: finiteOrNull(shown(value)),
    reading: slot < 0 ? null : toReading(pipeline, slot, nowMs),
    band: {
      lowLow: finiteOrNull(shown(band.lowLow)),
      low: finiteOrNull(shown(band.low)),
      high: finiteOrNull(shown(band.high)),
      highHigh: finiteOrNull(shown(band.highHigh)),
      basis: band.basis,
    },
    word: bandWord(value, band),
    sensor: sensorSlot < 0 ? null : (site.slots.pointId[sensorSlot] ?? null),
    lastCalibration,
    byHand,
    dueEverySeconds: byHand ? finiteOrNull(dueMs / 1000) : null,
    dueAt: byHand
      ? timeText(last === undefined ? (Number.isNaN(dueMs) ? NaN : pipeline.startedMs()) : last.takenMs + dueMs)
      : null,
    overdue: isOverdue(state, parameter),
    lastEntry: last === undefined ? null : toHandEntry(last, pipeline),
  };
}

/** Molybdate as the site wants it shown; everything else as it is. */
const showing = ({ water }: CompiledUnit, { id }: CompiledWaterParameter): ((value: number) => number) =>
  id === 'molybdate' && water.molybdateShownAs === 'MoO4' ? molybdateOfMolybdenum : (value) => value;
