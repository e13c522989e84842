import type { CDPSession, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { startEbbline } from '../helpers/ebbline';
import { launchMosquitto } from '../helpers/mosquitto';
import { probeRequirements } from '../helpers/probe-requirements';
import { temporaryFolder } from '../helpers/temporary-folder';
import { keepDoing, startSender, writeSite } from '../end-to-end/row-of-units';
import { hallId, unitId } from './bench-site';

const seconds = (s: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, s * 1000));
const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** CPU time of the page's main thread so far, s, by what it was for. */
interface Spent {
  readonly all: number;
  readonly script: number;
  readonly layout: number;
  readonly style: number;
}

async function spent(session: CDPSession): Promise<Spent> {
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string): number => metrics.find((one) => one.name === name)?.value ?? Number.NaN;
  return {
    all: of('TaskDuration'),
    script: of('ScriptDuration'),
    layout: of('LayoutDuration'),
    style: of('RecalcStyleDuration'),
  };
}

async function between(session: CDPSession, act: () => Promise<unknown>): Promise<Spent> {
  const before = await spent(session);
  await act();
  const after = await spent(session);
  return {
    all: after.all - before.all,
    script: after.script - before.script,
    layout: after.layout - before.layout,
    style: after.style - before.style,
  };
}

/** `node tests/bench/hall-screen.bench.mjs`: figures as they are. Loopback only; ends by itself. */
export async function run([units = 200, measureS = 30]: readonly number[]): Promise<void> {
  const { chromium: program, mosquitto } = await probeRequirements();
  if (program.path === null) throw new Error(`the bench needs Chromium: ${program.bring}`);
  if (mosquitto.path === null) throw new Error(`the bench needs mosquitto: ${mosquitto.bring}`);
  const folder = await temporaryFolder();
  const broker = await launchMosquitto(mosquitto.path, { configuration: ['allow_anonymous true'] });
  const site = await writeSite(folder.path, units, units);
  const ebbline = await startEbbline({
    data: `${folder.path}/data`,
    env: { EBBLINE_SITE: site, EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off' },
  });
  const sender = await startSender(broker.url, units);
  const feed = keepDoing(() => sender.sendAll(), 1000);
  const browser = await chromium.launch({ executablePath: program.path, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    await context.addCookies([{ ...(await ebbline.signIn.cookie()), url: ebbline.url }]);
    for (const rows of ['small', 'full'] as const) {
      const page = await context.newPage();
      const session = await context.newCDPSession(page);
      await session.send('Performance.enable', { timeDomain: 'threadTicks' });
      const frames: string[] = [];
      page.on('websocket', (socket) =>
        socket.on('framereceived', ({ payload }) => {
          if (typeof payload === 'string' && payload.includes('"screen":"hall"')) frames.push(payload);
        }),
      );
      await page.goto(`${ebbline.url}/halls/${hallId(0)}?rows=${rows}`);
      await page.getByTestId(`loop-${unitId(units - 1)}`).waitFor({ timeout: 120_000 });
      await seconds(10);
      frames.length = 0;
      const used = await between(session, () => seconds(measureS));
      const count = frames.length;
      const perFrameMs = (used.all / count) * 1000;
      const parseMs = await parseOnly(session, page, frames.at(-1) ?? '');
      const share = (s: number): string => `${((s / measureS) * 100).toFixed(1)} %`;
      say(
        `${units} units, rows ${rows}: ${count} frames of ${Math.round((frames.at(-1) ?? '').length / 1000)} kB in ${measureS} s`,
      );
      say(
        `  main thread ${share(used.all)} of a core: script ${share(used.script)}, style ${share(used.style)}, layout ${share(used.layout)}`,
      );
      say(
        `  a frame: ${perFrameMs.toFixed(1)} ms, JSON.parse of it in the same page ${parseMs.toFixed(2)} ms, ratio ${(perFrameMs / parseMs).toFixed(1)}`,
      );
      await page.close();
    }
  } finally {
    await browser.close();
    await feed.stop();
    await sender.stop();
    await ebbline.stop();
    await broker.stop();
    await folder.stop();
  }
}

const parses = 100;
/** What the bare reading of a frame costs, ms. */
async function parseOnly(session: CDPSession, page: Page, frame: string): Promise<number> {
  const text = frame.slice(frame.indexOf('['));
  const read = ([given, times]: readonly [string, number]): number => {
    let sum = 0;
    for (let i = 0; i < times; i += 1) sum += (JSON.parse(given) as unknown[]).length;
    return sum;
  };
  const bare = await between(session, () => page.evaluate(read, [text, 0] as const));
  const used = await between(session, () => page.evaluate(read, [text, parses] as const));
  return ((used.all - bare.all) / parses) * 1000;
}
