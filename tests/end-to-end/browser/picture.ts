import type { Browser, Locator } from 'playwright-core';

/** Pixels of a part of the page, as the screen shows them. */
export interface Picture {
  /** Place of the first pixel on the page, px. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, alpha, row by row. */
  readonly rgba: readonly number[];
}

export type Colour = readonly [red: number, green: number, blue: number];

/** Takes the picture of an element; the PNG is decoded in a page of its own, out of the reach of the program's page. */
export async function pictureOf(browser: Browser, element: Locator): Promise<Picture> {
  const box = await element.boundingBox();
  if (box === null) throw new Error('the element is not shown');
  const [x, y] = [Math.floor(box.x), Math.floor(box.y)];
  const clip = { x, y, width: Math.ceil(box.x + box.width) - x, height: Math.ceil(box.y + box.height) - y };
  const png = await element.page().screenshot({ clip });
  const decoder = await browser.newPage();
  const rgba = await decoder.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext('2d');
    context?.drawImage(image, 0, 0);
    return [...(context?.getImageData(0, 0, image.width, image.height).data ?? [])];
  }, png.toString('base64'));
  await decoder.close();
  return { ...clip, rgba };
}

/** Columns of row `y` (of the page) in which `holds` is true, as places on the page. */
export function columnsOf(picture: Picture, y: number, holds: (colour: Colour) => boolean): number[] {
  const row = Math.round(y) - picture.y;
  return Array.from({ length: picture.width }, (_, i) => i)
    .filter((i) => {
      const at = (row * picture.width + i) * 4;
      return holds([picture.rgba[at] ?? 0, picture.rgba[at + 1] ?? 0, picture.rgba[at + 2] ?? 0]);
    })
    .map((i) => i + picture.x);
}

/** Within a few steps of 256, so that a half-covered pixel is not taken for a whole one. */
export const near =
  (wanted: Colour, within = 24) =>
  (colour: Colour): boolean =>
    wanted.every((part, i) => Math.abs(part - (colour[i] ?? 0)) <= within);

/** First column of the longest unbroken run, and the one after its last: what is drawn, without specks of text beside it. */
export function longestRun(columns: readonly number[]): [from: number, to: number] {
  let best: [number, number] = [Number.NaN, Number.NaN];
  let from = Number.NaN;
  columns.forEach((column, i) => {
    if (columns[i - 1] !== column - 1) from = column;
    if (!(best[1] - best[0] > column + 1 - from)) best = [from, column + 1];
  });
  return best;
}
