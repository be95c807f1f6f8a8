// npm start: builds the app and serves it on this machine. Further arguments go to the server, such as --port 5000.
import { installPackages, run } from './ready.mjs';

const served =
  installPackages() && run('vite', ['build']) && run('vite', ['preview', ...process.argv.slice(2)]);
process.exitCode = served ? 0 : 1;
