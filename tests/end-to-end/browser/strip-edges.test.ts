import type { PointList } from '@ebbline/shared/contract/http-api';
import type { PressureWindow } from '@ebbline/shared/contract/live-feed';
import type { Browser, Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { hallFrame } from './hall-frame';
import { openPage } from './open-page';
import { columnsOf, longestRun, near, pictureOf } from './picture';
import { startStillHall } from './small-hall';
import { tokenColour } from './token-colour';

type Box = NonNullable<Awaited<ReturnType<Locator['boundingBox']>>>;

suiteNeeding(['chromium'], 'the pressure window', () => {
  const keep = stopAfterAll();
  let still: Awaited<ReturnType<typeof startStillHall>> | null = null;

  test.for(['light', 'dark'] as const)('has its edges where the API says, to one pixel (%s)', async (colorScheme) => {
    still ??= keep(await startStillHall());
    const { ebbline } = still;
    const window = await windowOfM1(ebbline.url);
    const { points } = await ebbline.get<PointList>('/api/units/m1/points');
    const point = (id: string): number => points.find((candidate) => candidate.id === id)?.value ?? Number.NaN;
    // The socket and the HTTP interface speak of the same moment, and the barometer stands where it was sent.
    expect(window.ambient).toBeCloseTo(101_325, 6);
    expect(window.ambient - window.highest).toBeCloseTo(point('vacuumMargin'), 6);
    expect(window.lowest - window.lowerWall).toBeCloseTo(point('lowerWallMargin'), 6);

    const { browser, page } = keep(await openPage(ebbline.url, { colorScheme }));
    const strip = page.getByTestId('strip-m1');
    await page.getByTestId('strip-m1-bar').waitFor();
    const { axis, box, bar, picture } = await atRest(browser, strip, page.getByTestId('strip-m1-bar'));
    const axisNumber = (key: string): number => Number(axis[key]);
    const perPa = (axisNumber('axisX1') - axisNumber('axisX0')) / (axisNumber('axisMaxPa') - axisNumber('axisMinPa'));
    const placeOf = (pa: number): number => box.x + axisNumber('axisX0') + (pa - axisNumber('axisMinPa')) * perPa;

    const water = near(await tokenColour(page, '--water'));
    const paper = near(await tokenColour(page, '--paper'), 4);
    const [barLeft, barRight] = longestRun(columnsOf(picture, bar.y + bar.height / 2, water));
    // At the top, an hour ago, stand the two banks alone, with paper between them.
    const [wallEdge, ambientEdge] = longestRun(columnsOf(picture, box.y + 3, paper));

    const off = {
      lowerWall: wallEdge - placeOf(window.lowerWall),
      lowest: barLeft - placeOf(window.lowest),
      highest: barRight - placeOf(window.highest),
      ambient: ambientEdge - placeOf(window.ambient),
    };
    for (const [edge, px] of Object.entries(off)) expect(Math.abs(px), edge).toBeLessThanOrEqual(1);
    // The picture is of use: a pixel is much less than what it shows.
    expect(perPa * 1000).toBeGreaterThan(2);
    expect(barRight - barLeft).toBeGreaterThan(20);
  });
});

/** The strip and its picture of one and the same moment: while letters and first values come, the page still moves. */
async function atRest(browser: Browser, strip: Locator, bar: Locator) {
  const look = async () => ({
    axis: await strip.evaluate((svg) => Object.fromEntries(Object.entries((svg as SVGElement).dataset))),
    box: await boxOf(strip),
    bar: await boxOf(bar),
  });
  return until(async () => {
    await strip.page().evaluate(() => document.fonts.ready.then(() => null));
    const before = await look();
    const picture = await pictureOf(browser, strip);
    return JSON.stringify(before) === JSON.stringify(await look()) ? { ...before, picture } : null;
  });
}

async function boxOf(element: Locator): Promise<Box> {
  const box = await element.boundingBox();
  if (box === null) throw new Error('the strip is not shown');
  return box;
}

/** What the server tells every screen about unit m1, Pa absolute, once all of it is known. */
async function windowOfM1(url: string): Promise<Record<'lowest' | 'highest' | 'ambient' | 'lowerWall', number>> {
  const ofM1 = (loops: readonly { unit: string; pressureWindow: PressureWindow }[]) =>
    loops.find(({ unit }) => unit === 'm1')?.pressureWindow;
  const { loops } = await hallFrame(url, 'north', (frame) => typeof ofM1(frame.loops)?.lowerWallPa === 'number');
  const window = ofM1(loops);
  return {
    lowest: window?.lowestPa ?? Number.NaN,
    highest: window?.highestPa ?? Number.NaN,
    ambient: window?.ambientPa ?? Number.NaN,
    lowerWall: window?.lowerWallPa ?? Number.NaN,
  };
}
