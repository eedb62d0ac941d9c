// Stands in for @vscode/native-watchdog, so that nothing has to be compiled: ends this process when the editor's server is gone.
export function start(server) {
  setInterval(() => {
    try {
      process.kill(server, 0);
    } catch {
      process.exit(87);
    }
  }, 1000).unref();
}

export function exit(code = 0) {
  process.exit(code);
}
