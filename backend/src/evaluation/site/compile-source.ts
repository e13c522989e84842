import type { PointInFile } from '@ebbline/shared/contract/site-file-points';
import { fillIn, type FillIns, type PathReader } from './fill-in';
import { topicFault } from './topic-check';

type Path = string | readonly string[];
export interface TimeInFile {
  readonly path: Path;
  readonly form: 'iso' | 'epochSeconds' | 'epochMilliseconds';
}
export interface QualityInFile {
  readonly path: Path;
  readonly good: readonly (string | number | boolean)[];
}

/** What a unit or hall says for all its points. */
export interface CommonSource {
  readonly topic: string | undefined;
  readonly time: TimeInFile | undefined;
  readonly quality: QualityInFile | undefined;
}

/** Where a sample of a point is found: in which topic, and where in it. */
export interface PointSource {
  readonly topic: string;
  readonly path: readonly string[];
  readonly time: { readonly path: readonly string[]; readonly form: TimeInFile['form'] } | null;
  readonly qualityPath: readonly string[] | null;
  readonly qualityGood: readonly (string | number | boolean)[];
}

const noPath: readonly string[] = [];
const nothingGood: PointSource['qualityGood'] = [];

type Report = (key: string | null, message: string) => void;

/**
 * `topic` alone: a bare number. `topic` and `path`: JSON. `path` alone: JSON in the common topic.
 * Null where a fault was reported.
 */
export function compileSource(
  file: PointInFile,
  common: CommonSource,
  fillIns: FillIns,
  paths: PathReader,
  fault: Report,
): PointSource | null {
  const written = file.topic ?? (file.path === undefined ? undefined : common.topic);
  if (written === undefined) {
    fault(
      null,
      file.path === undefined
        ? 'nothing says where it is found; give `topic` (a bare number), or `path` in the common topic, or both'
        : '`path` needs a topic; give `topic` here or for the whole unit or hall',
    );
    return null;
  }
  const { text: topic, unknown } = fillIn(written, fillIns);
  const wrong =
    unknown.length > 0
      ? `{${unknown.join('}, {')}} means nothing here; known are {${Object.keys(fillIns).join('}, {')}}`
      : topicFault(topic);
  if (wrong !== null) {
    fault(file.topic === undefined ? null : 'topic', wrong);
    return null;
  }
  if (file.path === undefined) {
    if (file.time !== undefined) fault('time', 'a bare number carries no time; give `path` or take `time` out');
    if (file.quality !== undefined)
      fault('quality', 'a bare number carries no quality; give `path` or take `quality` out');
    return { topic, path: noPath, time: null, qualityPath: null, qualityGood: nothingGood };
  }
  const time = file.time ?? common.time;
  const quality = file.quality ?? common.quality;
  return {
    topic,
    path: paths.keys(file.path, fillIns),
    time: time === undefined ? null : { path: paths.keys(time.path, fillIns), form: time.form },
    qualityPath: quality === undefined ? null : paths.keys(quality.path, fillIns),
    qualityGood: quality?.good ?? nothingGood,
  };
}
