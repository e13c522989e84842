import { createApp } from 'vue';
import { createRouter, createWebHistory } from 'vue-router';
import App from './App.vue';
import { csrfOfSession } from './api/entry-marks';
import { useLiveFeed } from './feed/use-live-feed';
import { routes } from './router';
import { joinFeed } from './state/join-feed';
import { liveFeedKey } from './state/live-feed-key';
import { startSession } from './state/use-session';
import { startTheme } from './state/use-theme';
import { startUnits } from './state/use-units';
import './styles/fonts.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/missing-figures.css';
import './styles/coming.css';
import './styles/hall.css';
import './styles/loop.css';
import './styles/alarms.css';
import './styles/chapters.css';
import './styles/trends.css';
import './styles/setup.css';
import './styles/entry.css';
import './styles/narrow.css';
import './styles/phone.css';
import './styles/phone-rows.css';

startTheme();
startUnits();
startSession();
const feed = useLiveFeed({ csrf: csrfOfSession });
joinFeed(feed);
createApp(App)
  .use(
    createRouter({
      history: createWebHistory(),
      routes,
      // What is only opened or chosen on a screen leaves it where it stands.
      scrollBehavior: (to, from, kept) => kept ?? (to.path === from.path ? false : { top: 0 }),
    }),
  )
  .provide(liveFeedKey, feed)
  .mount('#app');
