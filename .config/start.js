/**
 * Builds the app and the command line, then serves the app on this machine until it is told to stop.
 * All in one process, so that nothing is left running behind. `--strict-port` refuses any other port than the asked one.
 */
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => process.exit(0));
if (process.env.npm_lifecycle_event === 'start') stopWithParent();

await build();
await build({ mode: 'cli' });
const server = await preview({
  preview: {
    host: '127.0.0.1',
    port: Number(process.env.PORT ?? 4173),
    strictPort: process.argv.includes('--strict-port')
  }
});
console.log(`\nRoundsplit is open at ${server.resolvedUrls?.local[0]} (Ctrl+C stops it)`);

/** A killed `npm start` tells its child nothing: the child notices that it has been handed to another parent. */
function stopWithParent() {
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) process.exit(0);
  }, 500).unref();
}
