import { createApp } from 'vue';
import { createRouter, createWebHistory } from 'vue-router';
import App from './App.vue';
import { useLiveFeed } from './feed/use-live-feed';
import { routes } from './router';
import { liveFeedKey } from './state/live-feed-key';
import { startTheme } from './state/use-theme';
import './styles/fonts.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/screens.css';

startTheme();
createApp(App)
  .use(
    createRouter({
      history: createWebHistory(),
      routes,
      scrollBehavior: (_to, _from, kept) => kept ?? { top: 0 },
    }),
  )
  .provide(liveFeedKey, useLiveFeed())
  .mount('#app');
