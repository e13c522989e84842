import { Global, Module, type DynamicModule, type ValueProvider } from '@nestjs/common';
import { HealthModule } from './connections/health/health.module';
import { HttpApiModule } from './connections/http-api/http-api.module';
import { LiveFeedModule } from './connections/live-feed/live-feed.module';
import { MetricsModule } from './connections/metrics/metrics.module';

/** What the rooms ask for by token, already built. */
@Global()
@Module({})
class PartsModule {
  static of(parts: readonly ValueProvider[]): DynamicModule {
    const tokens = parts.map(({ provide }) => provide);
    return { module: PartsModule, providers: [...parts], exports: tokens };
  }
}

/** The only place where ports meet connections: every part by its token. */
@Module({})
export class AppModule {
  static of(parts: readonly ValueProvider[]): DynamicModule {
    return {
      module: AppModule,
      imports: [PartsModule.of(parts), HttpApiModule, LiveFeedModule, HealthModule, MetricsModule],
    };
  }
}
