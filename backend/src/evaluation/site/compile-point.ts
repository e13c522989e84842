import type { PointDefinition } from '@ebbline/shared/contract/point-table';
import type { PointInFile } from '@ebbline/shared/contract/site-file-points';
import { parseQuantity } from '@ebbline/shared/contract/site-file-quantity';
import { accuracyNotStated, ofLargest, parseAccuracy } from './accuracy';
import { Reference } from './compiled-site';
import { payloadScale } from './payload-scale';
import { parseDifference, parseRange, physicalRange } from './point-range';
import { compileWords, type Words } from './words';

/** What a slot needs of a measured point; all SI. */
export interface CompiledPoint {
  readonly id: string;
  readonly definition: PointDefinition;
  readonly factor: number;
  readonly offset: number;
  readonly reference: number;
  readonly minimum: number;
  readonly maximum: number;
  readonly jumpPerS: number;
  readonly periodMs: number;
  readonly stuckMs: number;
  readonly accuracyAbsolute: number;
  readonly accuracyRelative: number;
  readonly accuracyNormalAbsolute: number;
  readonly accuracyNormalRelative: number;
  readonly words: Words | null;
}

const defaultPeriodMs = 1000;

function referenceOf(file: PointInFile, definition: PointDefinition, fault: Report): number {
  if (definition.quantity !== 'absolutePressure') {
    if (file.reference !== undefined)
      fault('reference', 'goes with pressures only (a pressure drop has none); take it out');
    return Reference.none;
  }
  if (file.reference === undefined) {
    fault(
      'reference',
      'is missing; say absolute, gauge or vacuum, as the sensor tells it (gauge taken as absolute is the commonest mistake)',
    );
    return Reference.absolute;
  }
  return Reference[file.reference];
}

type Report = (key: string, message: string) => void;

const milliseconds = (text: string | undefined, otherwise: number): number => {
  if (text === undefined) return otherwise;
  const parsed = parseQuantity(text, 'duration');
  return parsed.ok ? parsed.value * 1000 : otherwise;
};

/** Checks one point against its quantity and turns all its numbers into SI; faults go to `fault` by key. */
export function compilePoint(id: string, file: PointInFile, definition: PointDefinition, fault: Report): CompiledPoint {
  const { quantity } = definition;
  const reference = referenceOf(file, definition, fault);
  const relativeToAmbient = reference === Reference.gauge || reference === Reference.vacuum;
  const scaled = payloadScale(file, definition);
  if (!scaled.ok) fault(scaled.fault.key, scaled.fault.message);
  const scale = scaled.ok ? scaled.value : { unit: '1', factor: 1, offset: 0 };

  let range = physicalRange(quantity, relativeToAmbient);
  if (file.range !== undefined && scaled.ok) {
    const parsed = parseRange(file.range, quantity, scale);
    if (parsed.ok) range = parsed.value;
    else fault('range', parsed.fault);
    if (parsed.ok && file.reference === 'absolute' && parsed.value.minimum < 0)
      fault('range', 'an absolute pressure is never below 0; did you mean reference: gauge?');
  }

  let jumpPerS = Number.POSITIVE_INFINITY;
  if (file.jumpPerSecond !== undefined && scaled.ok) {
    const parsed = parseDifference(file.jumpPerSecond, quantity, scale);
    if (parsed.ok && parsed.value > 0) jumpPerS = parsed.value;
    else fault('jumpPerSecond', parsed.ok ? 'expected more than 0' : parsed.fault);
  }

  let accuracy = accuracyNotStated;
  if (file.accuracy !== undefined && scaled.ok) {
    const spanSi = file.range === undefined ? null : range.maximum - range.minimum;
    const parsed = parseAccuracy(file.accuracy, {
      difference: (text) => parseDifference(text, quantity, scale),
      spanSi: spanSi !== null && Number.isFinite(spanSi) ? spanSi : null,
      temperature: quantity === 'temperature',
      flow: quantity === 'volumeFlow',
    });
    if (parsed.ok) accuracy = parsed.value;
    else fault('accuracy', parsed.fault);
    // "Of reading" means the sensor's own reading; a gauge reading is not the absolute value that the slot
    // holds, so its largest is taken.
    if (relativeToAmbient && Number.isFinite(range.minimum) && Number.isFinite(range.maximum))
      accuracy = ofLargest(accuracy, Math.max(Math.abs(range.minimum), Math.abs(range.maximum)));
  }

  const words = compileWords(file.words, quantity);
  if (!words.ok) fault(words.fault.word === null ? 'words' : `words.${words.fault.word}`, words.fault.message);
  const periodMs = milliseconds(file.period, defaultPeriodMs);
  if (!(periodMs > 0)) fault('period', 'expected more than 0 s');
  const stuckMs = milliseconds(file.stuckAfter, Number.POSITIVE_INFINITY);
  if (!(stuckMs > 0)) fault('stuckAfter', 'expected more than 0 s');

  return {
    id,
    definition,
    factor: scale.factor,
    offset: scale.offset,
    reference,
    minimum: range.minimum,
    maximum: range.maximum,
    jumpPerS,
    periodMs,
    stuckMs,
    accuracyAbsolute: accuracy.absolute,
    accuracyRelative: accuracy.relative,
    accuracyNormalAbsolute: accuracy.normalAbsolute,
    accuracyNormalRelative: accuracy.normalRelative,
    words: words.ok ? words.value : null,
  };
}
