// Loaded before the server under test: on SIGUSR2 it collects garbage and says what is left, one line of JSON on the error output.
process.on('SIGUSR2', () => {
  globalThis.gc();
  globalThis.gc();
  const { heapUsed, external } = process.memoryUsage();
  process.stderr.write(`HEAP ${JSON.stringify({ heap: heapUsed + external, handles: process.getActiveResourcesInfo().length })}\n`);
});
