import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'vite';

export default defineConfig({
  plugins: [vue()],
  // Every asset is a file of its own: a strict content security policy then needs no `data:`.
  build: { assetsInlineLimit: 0, target: 'es2022' },
});
