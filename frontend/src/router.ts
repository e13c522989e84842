import type { RouteRecordRaw } from 'vue-router';
import AlarmScreen from './screens/alarms/AlarmScreen.vue';
import HallScreen from './screens/hall/HallScreen.vue';
import LoopScreen from './screens/loop/LoopScreen.vue';

/** Addresses of the screens. Anything else leads to the first hall. */
export const routes: readonly RouteRecordRaw[] = [
  { path: '/', redirect: '/halls' },
  { path: '/halls/:hall?', name: 'hall', component: HallScreen, props: true },
  { path: '/units/:unit', name: 'loop', component: LoopScreen, props: true },
  { path: '/alarms', name: 'alarms', component: AlarmScreen },
  { path: '/:rest(.*)*', redirect: '/halls' },
];
