import { Module } from '@nestjs/common';
import { AlarmsController } from './alarms.controller';
import { HistoryController } from './history.controller';
import { IntakeController } from './intake.controller';
import { OpenApiController } from './openapi.controller';
import { SiteController } from './site.controller';

@Module({ controllers: [SiteController, HistoryController, AlarmsController, IntakeController, OpenApiController] })
export class HttpApiModule {}
