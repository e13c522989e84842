import type { ValueProvider } from '@nestjs/common';
import { version } from '../../package.json';
import { clientId } from '../connections/config/client-id';
import type { Environment } from '../connections/config/environment';
import { brokerLimits } from '../connections/embedded-broker/broker-limits';
import { HeldAcknowledgements } from '../connections/mqtt-intake/held-acknowledgements';
import { MqttIntake } from '../connections/mqtt-intake/mqtt-intake';
import { SiteReader } from '../connections/site-files/site-reader';
import { SystemClock } from '../connections/system-clock/system-clock';
import { SystemTicker } from '../connections/system-clock/system-ticker';
import { createPipeline } from '../evaluation/pipeline/create-pipeline';
import { ALARM_JOURNAL } from '../ports/alarm-journal';
import { BROKER_LINK } from '../ports/broker-link';
import { CLOCK } from '../ports/clock';
import { RUNNER_HEALTH } from '../ports/health-report';
import { armFailpoint } from '../ports/failpoint';
import { DEMO_PLANTS } from '../ports/demo-plants';
import { ENERGY_TOTALS } from '../ports/energy-totals';
import { GUIDED_DESK } from '../ports/guided-desk';
import { HISTORY_STORE } from '../ports/history-store';
import { INTAKE_REPORT } from '../ports/intake-report';
import { LIVE_VIEW, OPERATIONS } from '../ports/live-view';
import type { LogLevel } from '../ports/program-log';
import { PAST_DESK } from '../ports/past-desk';
import { PROGRAM_VERSION } from '../ports/program-version';
import { noticeToAll } from '../ports/notice';
import { SITE_CHECKER } from '../ports/site-check';
import { SITE_IN_FORCE } from '../ports/site-in-force';
import { WATER_DESK } from '../ports/water-desk';
import { TICKER } from '../ports/ticker';
import { TIGHTNESS_DESK } from '../ports/tightness-desk';
import { EnergyFromHistory } from '../runner/energy/energy-from-history';
import { keepDays, LatestDays } from '../runner/energy/latest-days';
import { WatchedHistory } from '../runner/energy/watched-history';
import { RunnerPastDesk } from '../runner/past/past-desk';
import { pipelineInForce } from '../runner/pipeline-in-force';
import { ProgramRuns } from '../runner/program-runs';
import { createRunner } from '../runner/runner';
import { sourceTickClock, wallTickClock } from '../runner/tick-clock';
import { ClosingStack } from './closing-stack';
import { environmentOf } from './environment-of';
import { historyLayout } from './history-layout';
import { healthOf } from './health-of';
import { intakeSettings } from './intake-settings';
import { openAlarmList } from './open-alarm-list';
import { openAuthorisedList } from './open-authorised-list';
import { openAlarmPublication, ownTopicsOf } from './open-alarm-publication';
import { openBroker } from './open-broker';
import { openDemoPlants } from './open-demo-plants';
import { openEntrance, sayFirstLink } from './open-entrance';
import { openJournalUpkeep } from './open-journal-upkeep';
import { openLog } from './open-log';
import { openMappingDesk } from './open-mapping-desk';
import { openNoteDesk } from './open-note-desk';
import { openPerformance } from './open-performance';
import { openReportDesk } from './open-report-desk';
import { openReload, watchSite, withReasons } from './open-reload';
import { openSite } from './open-site';
import { openStores } from './open-stores';
import { openTrendDesk } from './open-trend-desk';
import { openTrialDesk } from './open-trial-desk';
import { openWatch } from './open-watch';
import { openWeb } from './open-web';
import { sayUnwritten } from './say-unwritten';

export interface StartOptions {
  readonly variables: Readonly<Record<string, string | undefined>>;
  readonly workingFolder: string;
  readonly demoSiteFile: string;
  /** The authorised list of alarms of the demo site; left out: it has none. */
  readonly demoAlarmList?: string;
  /** The built screens; null serves the interfaces alone. */
  readonly frontendFolder: string | null;
  /** The built worker of the history store; null keeps history on this thread. */
  readonly historyWorker: URL | null;
  /** The built worker that reads changed site files; null reads them on this thread. */
  readonly siteWorker: URL | null;
  /** One line for the one who started the program. */
  readonly say: (line: string) => void;
  /** An unexpected fault; the log tells it too. */
  readonly report: (fault: unknown) => void;
  /** Takes whole lines of the log; left out, there is none. */
  readonly print?: (line: string, level: LogLevel) => void;
}

export interface RunningBackend {
  /** Where the screens are. */
  readonly address: string;
  readonly mqttUrl: string;
  /** What the simulator is to be told; null where it is not wanted. */
  readonly simulator: { readonly mqttUrl: string; readonly siteFile: string } | null;
  /** Lets go of the plant: judges no more and takes no more messages. To be called before the simulator is ended. */
  readonly leavePlant: () => Promise<void>;
  /** Leaves the plant, then ends everything in reverse order, with all that is confirmed kept. */
  readonly stop: () => Promise<void>;
}

/** How often the journal is asked again to tell of the start, where it could not be written. ms */
const RETRY_MS = 1000;

/** Opens everything in order. Throws `StartFault` where the one who started the program has to settle something. */
export async function startBackend(options: StartOptions): Promise<RunningBackend> {
  const environment = environmentOf(options);
  armFailpoint(options.variables['EBBLINE_TEST_FAILPOINT'], () => process.kill(process.pid, 'SIGKILL'));
  const closing = new ClosingStack();
  try {
    return await open(environment, options, closing);
  } catch (fault) {
    // What stopped the start is what a person must read; a fault of closing comes after it, often from the same cause.
    await closing.closeAll().catch((further: unknown) => options.say(`While closing: ${String(further)}`));
    throw fault;
  }
}

async function open(environment: Environment, options: StartOptions, closing: ClosingStack): Promise<RunningBackend> {
  const clock = new SystemClock();
  const ticker = new SystemTicker();
  const { say, report, ...logs } = openLog(environment, options, clock, ticker, closing);
  const siteNews = await watchSite(environment.siteFile, closing);
  const loaded = await openSite(environment.siteFile, say);
  const { site } = loaded;
  const authorised = await openAuthorisedList(environment.alarmList, site, say, closing);
  const end = { rowsUnwritten: (): number => 0 };
  closing.add(() => sayUnwritten(end.rowsUnwritten(), say));
  const opened = await openStores(environment, options.historyWorker, closing);
  const watched = openWatch(environment, opened, clock, ticker, closing);
  const { journal, store: history, memory, keptEnergy } = watched.stores;
  const runs = new ProgramRuns(journal, version, () => clock.wallMs());
  closing.add(() => runs.end());
  const tickClock = environment.clock === 'wall' ? wallTickClock(clock) : sourceTickClock();
  const store = new WatchedHistory(history, keptEnergy, () => tickClock.nowMs(), report);
  await store.useLayout(historyLayout(site));

  const alarmList = openAlarmList(site, journal, authorised, clock);
  const startMs = tickClock.nowMs();
  const inForce = pipelineInForce(createPipeline(alarmList.settings.running(), { clock: environment.clock, startMs }));
  const gate = new HeldAcknowledgements();
  const limits = brokerLimits(site.maximumPayloadBytes);
  const ownTopics = ownTopicsOf(environment.alarmTopic, site.id);
  const use = { clientId: clientId(environment.dataFolder), ownTopics, limits, ticker, say };
  const broker = await openBroker(environment, use, closing);
  const link = (): MqttIntake => intake;
  const publication = openAlarmPublication(
    {
      prefix: environment.alarmTopic,
      site: site.id,
      broker,
      standing: () => runner.news(),
      dataFolder: environment.dataFolder,
    },
    closing,
  );
  const runner = createRunner({
    pipeline: inForce.pipeline,
    journal,
    notice: noticeToAll(publication.takers),
    store,
    memory,
    gate,
    clock,
    ticker,
    tickClock,
    broker: () => link().state(),
    watch: watched.watch,
  });
  end.rowsUnwritten = () => runner.rowsUnwritten();
  closing.add(() => runner.stop());
  const energy = {
    site: () => inForce.pipeline.site,
    store,
    kept: keptEnergy,
    nowMs: () => tickClock.nowMs(),
    monotonicMs: () => clock.monotonicMs(),
  };
  closing.add(keepDays(new LatestDays(energy), ticker));
  const intake = new MqttIntake(intakeSettings(use, site, broker), logs.watchIntake(runner.sink), gate, clock);

  const reader = new SiteReader(options.siteWorker, undefined, environment.siteFile);
  closing.add(() => reader.stop());
  const reload = openReload(environment.siteFile, loaded, reader, {
    wallMs: () => clock.wallMs(),
    say,
    async replace(next) {
      await runner.changeSite(historyLayout(next), () =>
        inForce.replace(alarmList.settings.follow(next), tickClock.nowMs()),
      );
      await intake.follow(next.subscriptions);
      alarmList.refused.look();
      await authorised.follow(next);
    },
  });

  const { frontendFolder } = options;
  const {
    edge,
    people,
    parts: ofEntrance,
    reasons: ofPeople,
  } = openEntrance(environment, { journal, clock, ticker, demo: site.demo, report }, closing);
  const ofJournal = openJournalUpkeep(environment.journalKeepDays, journal, clock, ticker, closing);
  const health = withReasons(runner.health, () => [
    ...reload.reasons(),
    ...ofPeople(),
    ...ofJournal(),
    ...alarmList.refused.reasons(),
  ]);
  const energyTotals = new EnergyFromHistory(energy);
  const trends = openTrendDesk({ ...energy, journal });
  const notes = openNoteDesk({ ...energy, journal, wallMs: () => clock.wallMs() });
  const performance = openPerformance(environment, { ...energy, journal, clock });
  const parts: ValueProvider[] = [
    ...ofEntrance,
    { provide: CLOCK, useValue: clock },
    { provide: TICKER, useValue: ticker },
    ...watched.parts(inForce.pipeline, gate, logs.log, () => broker.refused?.() ?? null),
    { provide: PROGRAM_VERSION, useValue: version },
    { provide: ALARM_JOURNAL, useValue: journal },
    { provide: HISTORY_STORE, useValue: store },
    { provide: ENERGY_TOTALS, useValue: energyTotals },
    openTrialDesk({ ...energy, report }, closing),
    trends,
    notes,
    performance,
    openReportDesk({
      ...energy,
      ...{ journal, notes: notes.useValue, trends: trends.useValue, performance: performance.useValue },
      energy: energyTotals,
      wallMs: () => clock.wallMs(),
      unrecorded: () => runner.live.alarms().alarms.filter(({ recorded }) => recorded === false).length,
      siteSinceMs: () => Date.parse(reload.state().loadedAt),
    }),
    { provide: PAST_DESK, useValue: new RunnerPastDesk({ ...energy, journal, clock: tickClock.kind }) },
    { provide: LIVE_VIEW, useValue: runner.live },
    { provide: OPERATIONS, useValue: runner.operations },
    { provide: WATER_DESK, useValue: runner.water },
    { provide: TIGHTNESS_DESK, useValue: runner.tightness },
    { provide: GUIDED_DESK, useValue: runner.guided },
    alarmList.part({
      record: (change, step) => runner.recordSetting(change, step),
      relimit(next) {
        inForce.relimit(next);
        alarmList.refused.look();
      },
      nowMs: () => clock.wallMs(),
    }),
    { provide: RUNNER_HEALTH, useValue: health },
    { provide: SITE_IN_FORCE, useValue: reload },
    { provide: BROKER_LINK, useValue: intake },
    { provide: SITE_CHECKER, useValue: reader },
    { provide: INTAKE_REPORT, useValue: intake },
    openMappingDesk(
      broker,
      use,
      {
        site: () => inForce.pipeline.site,
        valueOf: (slot) => inForce.pipeline.state.value[slot] ?? Number.NaN,
        ticker,
        wallMs: () => clock.wallMs(),
        ownTopics,
      },
      closing,
    ),
    { provide: DEMO_PLANTS, useValue: openDemoPlants(site.demo, broker, use.clientId, closing) },
  ];
  const address = await openWeb(parts, { environment, edge, people, ticker, say, frontendFolder, report }, closing);
  const leavePlant = (): Promise<void> => {
    runner.endJudging();
    return intake.stop();
  };
  closing.add(leavePlant);
  runs.begin();
  const telling = ticker.every(RETRY_MS, () => runs.retry());
  closing.add(() => telling.stop());
  runner.start();
  publication.start();
  await intake.start();
  closing.add(() => siteNews.stop());
  siteNews.listen(() => void reload.reload());
  logs.watchHealth(healthOf(clock, { view: runner.live, broker: intake, history: store, runner: health, version }));
  sayBroker(intake, say);
  sayFirstLink(people, address, say);
  const simulator = environment.simulator ? { mqttUrl: broker.simulatorUrl, siteFile: environment.siteFile } : null;
  return { address, mqttUrl: broker.url, simulator, leavePlant, stop: () => closing.closeAll() };
}

function sayBroker(intake: MqttIntake, say: (line: string) => void): void {
  const { state, address, embedded, note } = intake.state();
  const which = `${embedded ? 'embedded broker' : 'broker'} on ${address}`;
  const how = state === 'connected' ? '' : ', not reached yet: it is tried again';
  say(`MQTT: ${which}${note === null ? '' : ` (${note})`}${how}`);
}
