import { Module } from '@nestjs/common';
import { LiveFeedGateway } from './live-feed.gateway';

@Module({ providers: [LiveFeedGateway] })
export class LiveFeedModule {}
