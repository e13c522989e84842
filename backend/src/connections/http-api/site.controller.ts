import { Controller, Get, Inject, Param } from '@nestjs/common';
import type { Explanation } from '@ebbline/shared/contract/explanation';
import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import type { PointList, Site } from '@ebbline/shared/contract/http-api';
import type { LimitList, Setup } from '@ebbline/shared/contract/setup';
import { LIVE_VIEW, type LiveView } from '../../ports/live-view';
import { ProblemError } from './problem-error';

/** What there is, and how it is now. */
@Controller('api')
export class SiteController {
  constructor(@Inject(LIVE_VIEW) private readonly view: LiveView) {}

  @Get('site')
  site(): Site {
    return this.view.site();
  }

  @Get('units')
  units(): ReturnType<LiveView['units']> {
    return this.view.units();
  }

  @Get('units/:unit/points')
  points(@Param('unit') unit: string): PointList {
    const points = this.view.points(unit);
    if (points === null)
      throw new ProblemError('UNIT_UNKNOWN', 'The site has no unit of this id; /api/units lists them.');
    return points;
  }

  @Get('units/:unit/limits')
  limits(@Param('unit') unit: string): LimitList {
    const limits = this.view.limits(unit);
    if (limits === null)
      throw new ProblemError('UNIT_UNKNOWN', 'The site has no unit of this id; /api/units lists them.');
    return limits;
  }

  @Get('units/:unit/setup')
  setup(@Param('unit') unit: string): Setup {
    const setup = this.view.setup(unit);
    if (setup === null)
      throw new ProblemError('UNIT_UNKNOWN', 'The site has no unit of this id; /api/units lists them.');
    return setup;
  }

  @Get('units/:unit/points/:point/explanation')
  explanation(@Param('unit') unit: string, @Param('point') point: string): Explanation {
    const explained = this.view.explanation(unit, point);
    if (explained === 'unitUnknown')
      throw new ProblemError('UNIT_UNKNOWN', 'The site has no unit of this id; /api/units lists them.');
    if (explained === 'pointUnknown')
      throw new ProblemError('POINT_UNKNOWN', 'The unit has no point of this id; /api/units/{unit}/points lists them.');
    return explained;
  }

  @Get('halls/:hall/trails')
  trails(@Param('hall') hall: string): HallTrails {
    const trails = this.view.hallTrails(hall);
    if (trails === null)
      throw new ProblemError('HALL_UNKNOWN', 'The site has no hall of this id; /api/site lists them.');
    return trails;
  }

  @Get('halls/:hall/points/:point/explanation')
  hallExplanation(@Param('hall') hall: string, @Param('point') point: string): Explanation {
    const explained = this.view.hallExplanation(hall, point);
    if (explained === 'hallUnknown')
      throw new ProblemError('HALL_UNKNOWN', 'The site has no hall of this id; /api/site lists them.');
    if (explained === 'pointUnknown')
      throw new ProblemError(
        'POINT_UNKNOWN',
        'The hall has no such value; it has its own points, heatRemoved, chipPower and capture.',
      );
    return explained;
  }
}
