import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';

/** Of how many pixels in a square of `windowPx` two pictures may differ: an edge of letters that lies a hair aside, and no word. */
const mostInWindow = 40;
const windowPx = 32;
/** Perceived distance of two colours from which on they differ, of 1 for black against white. */
const threshold = 0.1;

/** What a picture shows otherwise than the kept one, in words; null where both look the same. */
export function differenceOf(kept: Buffer, taken: Buffer): string | null {
  const [one, other] = [PNG.sync.read(kept), PNG.sync.read(taken)];
  const { width, height } = one;
  if (width !== other.width || height !== other.height)
    return `is ${other.width} × ${other.height} px and was ${width} × ${height} px`;
  const most = pixelmatch(one.data, other.data, null, width, height, { threshold, windowSize: windowPx });
  return most <= mostInWindow ? null : `differs in ${most} pixels of a square of ${windowPx} px`;
}

/** The picture with what differs marked, to be looked at. */
export function markedDifference(kept: Buffer, taken: Buffer): Buffer {
  const [one, other] = [PNG.sync.read(kept), PNG.sync.read(taken)];
  const { width, height } = one;
  if (width !== other.width || height !== other.height) return taken;
  const marked = new PNG({ width, height });
  pixelmatch(one.data, other.data, marked.data, width, height, { threshold });
  return PNG.sync.write(marked);
}
