import { defineConfig } from 'vitest/config';

// One module graph for each worker, and a worker for each processor: loading the program anew for each of the files took longer
// than the tests. Whatever a test changes for all (the working folder, the environment, a spy) it puts back.
export default defineConfig({
  test: { include: ['test/**/*.test.ts'], testTimeout: 300_000, hookTimeout: 300_000, isolate: false, maxWorkers: '100%' },
});
