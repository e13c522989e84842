/** What the plain compiler needs to know of components; `vue-tsc` reads the files themselves. */
declare module '*.vue' {
  import type { DefineComponent } from 'vue';
  const component: DefineComponent<Record<string, unknown>, Record<string, unknown>, unknown>;
  export { component as default };
}
