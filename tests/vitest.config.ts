import { defineConfig } from 'vitest/config';
import vue from '@vitejs/plugin-vue';

process.env.TZ = 'UTC';

export default defineConfig({
  root: new URL('.', import.meta.url).pathname,
  test: {
    projects: [
      { test: { name: 'unit', environment: 'node', include: ['unit/**/*.test.ts', 'published-values/**/*.test.ts', 'replay/**/*.test.ts'] } },
      { plugins: [vue()], test: { name: 'screens', environment: 'happy-dom', include: ['screens/**/*.test.ts'] } },
      { test: { name: 'integration', environment: 'node', include: ['integration/**/*.test.ts', 'contract/**/*.test.ts'] } },
      { test: { name: 'end-to-end', environment: 'node', include: ['end-to-end/**/*.test.ts'], fileParallelism: false } },
      { test: { name: 'house-rules', environment: 'node', include: ['house-rules/**/*.test.ts'] } },
    ],
  },
});
