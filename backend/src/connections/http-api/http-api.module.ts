import { Module } from '@nestjs/common';
import { AlarmListController } from './alarm-list.controller';
import { AlarmsController } from './alarms.controller';
import { AlertsController } from './alerts.controller';
import { DemoController } from './demo.controller';
import { EnergyController } from './energy.controller';
import { GuidedController } from './guided.controller';
import { HistoryController } from './history.controller';
import { IntakeController } from './intake.controller';
import { LimitTrialsController } from './limit-trials.controller';
import { JournalController } from './journal.controller';
import { MappingController } from './mapping.controller';
import { NotesController } from './notes.controller';
import { OpenApiController } from './openapi.controller';
import { OpenIdController } from './open-id.controller';
import { PastController } from './past.controller';
import { PeopleController } from './people.controller';
import { PerformanceController } from './performance.controller';
import { PermitsController } from './permits.controller';
import { ReportController } from './report.controller';
import { ReadyController } from './ready.controller';
import { SessionController } from './session.controller';
import { SetAsideController } from './set-aside.controller';
import { SiteFileController } from './site-file.controller';
import { SiteController } from './site.controller';
import { WaterController } from './water.controller';
import { TightnessController } from './tightness.controller';
import { TokensController } from './tokens.controller';
import { TrendsController } from './trends.controller';

@Module({
  controllers: [
    ReadyController,
    SiteController,
    SiteFileController,
    HistoryController,
    PastController,
    TrendsController,
    EnergyController,
    AlarmListController,
    AlarmsController,
    SetAsideController,
    JournalController,
    MappingController,
    NotesController,
    ReportController,
    AlertsController,
    LimitTrialsController,
    PerformanceController,
    PermitsController,
    TightnessController,
    GuidedController,
    WaterController,
    IntakeController,
    DemoController,
    SessionController,
    OpenIdController,
    PeopleController,
    TokensController,
    OpenApiController,
  ],
})
export class HttpApiModule {}
