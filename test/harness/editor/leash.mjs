// Loaded into the editor's server before it starts: when the program that started it dies, however it dies, the server and all its children go too.
if (process.argv[1]?.endsWith('server-main.js')) {
  const parent = process.ppid;
  setInterval(() => process.ppid !== parent && process.kill(-process.pid, 'SIGKILL'), 500).unref();
}
