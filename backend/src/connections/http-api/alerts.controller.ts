import { Controller, Get, Inject } from '@nestjs/common';
import type { AlertList } from '@ebbline/shared/contract/alert';
import { LIVE_VIEW, type LiveView } from '../../ports/live-view';

/** What an engineer is to know. */
@Controller('api/alerts')
export class AlertsController {
  constructor(@Inject(LIVE_VIEW) private readonly view: LiveView) {}

  @Get()
  list(): AlertList {
    return this.view.alerts();
  }
}
