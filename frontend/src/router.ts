import type { RouteRecordRaw } from 'vue-router';
import HallScreen from './screens/hall/HallScreen.vue';

/** Addresses of the screens; all but the first are fetched when they are first gone to. Anything else leads to the first hall. */
export const routes: readonly RouteRecordRaw[] = [
  { path: '/', redirect: '/halls' },
  { path: '/halls/:hall?', name: 'hall', component: HallScreen, props: true },
  {
    path: '/halls/:hall/past',
    component: () => import('./screens/past/PastHallScreen.vue'),
    props: true,
    children: [{ path: '', name: 'past-hall', component: () => import('./screens/hall/PastHall.vue') }],
  },
  {
    path: '/units/:unit/past',
    component: () => import('./screens/past/PastLoopScreen.vue'),
    props: true,
    children: [{ path: '', name: 'past-loop', component: () => import('./screens/loop/PastLoop.vue') }],
  },
  {
    path: '/units/:unit/at-unit',
    name: 'at-unit',
    component: () => import('./screens/loop/at-unit/AtUnitScreen.vue'),
    props: true,
    meta: { panel: true },
  },
  { path: '/units/:unit', name: 'loop', component: () => import('./screens/loop/LoopScreen.vue'), props: true },
  {
    path: '/units/:unit/tightness-tests/:test',
    name: 'tightness-record',
    component: () => import('./screens/tightness-record/TightnessRecordScreen.vue'),
    props: true,
  },
  {
    path: '/guided-tests',
    name: 'guided-tests',
    component: () => import('./screens/guided-tests/GuidedTestsScreen.vue'),
  },
  {
    path: '/units/:unit/guided-tests/:test',
    name: 'guided-test',
    component: () => import('./screens/guided-tests/GuidedTestScreen.vue'),
    props: true,
  },
  { path: '/alarms', name: 'alarms', component: () => import('./screens/alarms/AlarmScreen.vue') },
  {
    path: '/alarms/set-aside',
    name: 'alarms-set-aside',
    component: () => import('./screens/alarms/SetAsideScreen.vue'),
  },
  { path: '/alarms/journal', name: 'alarms-journal', component: () => import('./screens/alarms/JournalScreen.vue') },
  {
    path: '/performance',
    name: 'performance',
    component: () => import('./screens/performance/PerformanceScreen.vue'),
  },
  {
    path: '/limits/:entry?',
    name: 'limits',
    component: () => import('./screens/limits/LimitsScreen.vue'),
    props: true,
  },
  { path: '/trends', name: 'trends', component: () => import('./screens/trends/TrendsScreen.vue') },
  { path: '/energy', name: 'energy', component: () => import('./screens/energy/EnergyScreen.vue') },
  { path: '/report', name: 'report', component: () => import('./screens/report/ReportScreen.vue') },
  { path: '/setup/:unit?', name: 'setup', component: () => import('./screens/setup/SetupScreen.vue'), props: true },
  { path: '/sign-in', name: 'sign-in', component: () => import('./screens/sign-in/SignInScreen.vue') },
  { path: '/set-up', name: 'set-up', component: () => import('./screens/set-up/ChoosePasswordScreen.vue') },
  { path: '/signs', name: 'signs', component: () => import('./screens/signs/SignsScreen.vue') },
  { path: '/account', name: 'account', component: () => import('./screens/account/AccountScreen.vue') },
  { path: '/:rest(.*)*', redirect: '/halls' },
];
