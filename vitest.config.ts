import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';
import { grammarModule } from './grammar/module.mjs';

/** Loads grammars ready made and pattern files as strings, as the bundler does. */
const textFiles = {
  name: 'text-files',
  enforce: 'pre' as const,
  load(id: string): string | null {
    const path = id.split('?')[0] ?? id;
    if (path.endsWith('.ohm')) return grammarModule(readFileSync(path, 'utf8'));
    return path.endsWith('.quilt') ? `export default ${JSON.stringify(readFileSync(path, 'utf8'))};` : null;
  },
};

export default defineConfig({
  plugins: [textFiles],
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/editor/**', 'node_modules/**'],
    setupFiles: ['test/harness/seed.ts'],
    // One worker a core: the tests wait for little but the processor.
    maxWorkers: '100%',
    testTimeout: 30_000,
  },
});
