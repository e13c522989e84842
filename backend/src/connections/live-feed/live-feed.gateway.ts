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
import type { Server, Socket } from 'socket.io';
import type { ScreenToServer, ServerToScreen } from '@ebbline/shared/contract/live-feed';
import { CLOCK, type Clock } from '../../ports/clock';
import { ENTRANCE, type Entrance } from '../../ports/entrance';
import { LIVE_VIEW, type LiveView } from '../../ports/live-view';
import { TICKER, type Ticker } from '../../ports/ticker';
import { FEED_COUNTS, type FeedCounts } from '../../ports/web-counts';
import { FeedDesk } from './feed-desk';
import { FeedEntrance } from './feed-entrance';

type FeedSocket = Socket<ScreenToServer, ServerToScreen>;

/** How often is looked whether what clients are shown has changed, ms. */
const LOOK_EVERY_MS = 100;

/** The border to the screens: a client asks with `show` and is sent frames. */
@WebSocketGateway()
export class LiveFeedGateway implements OnGatewayInit, OnGatewayConnection, OnGatewayDisconnect, OnApplicationShutdown {
  private readonly desk: FeedDesk;
  private readonly entrance: FeedEntrance;
  private looking: { stop(): void } | null = null;

  constructor(
    @Inject(LIVE_VIEW) live: LiveView,
    @Inject(TICKER) private readonly ticker: Ticker,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(FEED_COUNTS) counts: FeedCounts,
    @Inject(ENTRANCE) entrance: Entrance,
  ) {
    this.desk = new FeedDesk(live, counts);
    this.entrance = new FeedEntrance(entrance);
  }

  afterInit(server: Server): void {
    server.use((socket, next) => {
      const fault = this.entrance.admit(socket);
      if (fault === null) next();
      else next(Object.assign(new Error(fault.code), { data: fault }));
    });
    this.looking = this.ticker.every(LOOK_EVERY_MS, () => {
      // First, so that nobody is shown anything that they may not see any more.
      this.entrance.look();
      this.desk.look(this.clock.monotonicMs());
    });
  }

  handleConnection(socket: FeedSocket): void {
    this.entrance.join(socket);
    this.desk.join(
      socket.id,
      (frame, taken) => socket.emit('frame', frame, taken),
      (refusal) => socket.emit('refused', refusal),
    );
  }

  handleDisconnect(socket: FeedSocket): void {
    this.entrance.leave(socket);
    this.desk.leave(socket.id);
  }

  @SubscribeMessage('show')
  show(@ConnectedSocket() socket: FeedSocket, @MessageBody() asked: unknown): void {
    if (!this.entrance.isLetIn(socket)) return;
    const refusal = this.desk.show(socket.id, asked, this.clock.monotonicMs());
    if (refusal !== null) socket.emit('refused', refusal);
  }

  onApplicationShutdown(): void {
    this.looking?.stop();
  }
}
