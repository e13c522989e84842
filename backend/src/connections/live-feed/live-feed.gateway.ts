import { Inject, type OnApplicationShutdown } from '@nestjs/common';
import {
  ConnectedSocket,
  MessageBody,
  SubscribeMessage,
  WebSocketGateway,
  type OnGatewayConnection,
  type OnGatewayDisconnect,
  type OnGatewayInit,
} from '@nestjs/websockets';
import type { Socket } from 'socket.io';
import type { ScreenToServer, ServerToScreen } from '@ebbline/shared/contract/live-feed';
import { CLOCK, type Clock } from '../../ports/clock';
import { LIVE_VIEW, type LiveView } from '../../ports/live-view';
import { TICKER, type Ticker } from '../../ports/ticker';
import { FEED_COUNTS, type FeedCounts } from '../../ports/web-counts';
import { FeedDesk } from './feed-desk';

type FeedSocket = Socket<ScreenToServer, ServerToScreen>;

/** How often is looked whether what clients are shown has changed, ms. */
const LOOK_EVERY_MS = 100;

/** The border to the screens: a client asks with `show` and is sent frames. */
@WebSocketGateway()
export class LiveFeedGateway implements OnGatewayInit, OnGatewayConnection, OnGatewayDisconnect, OnApplicationShutdown {
  private readonly desk: FeedDesk;
  private looking: { stop(): void } | null = null;

  constructor(
    @Inject(LIVE_VIEW) live: LiveView,
    @Inject(TICKER) private readonly ticker: Ticker,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(FEED_COUNTS) counts: FeedCounts,
  ) {
    this.desk = new FeedDesk(live, counts);
  }

  afterInit(): void {
    this.looking = this.ticker.every(LOOK_EVERY_MS, () => this.desk.look(this.clock.monotonicMs()));
  }

  handleConnection(socket: FeedSocket): void {
    this.desk.join(
      socket.id,
      (frame, taken) => socket.emit('frame', frame, taken),
      (refusal) => socket.emit('refused', refusal),
    );
  }

  handleDisconnect(socket: FeedSocket): void {
    this.desk.leave(socket.id);
  }

  @SubscribeMessage('show')
  show(@ConnectedSocket() socket: FeedSocket, @MessageBody() asked: unknown): void {
    const refusal = this.desk.show(socket.id, asked, this.clock.monotonicMs());
    if (refusal !== null) socket.emit('refused', refusal);
  }

  onApplicationShutdown(): void {
    this.looking?.stop();
  }
}
