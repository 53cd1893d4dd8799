import { DIST } from '../../.tools/built.mjs';
import { createAppServer } from '../../.tools/serve.mjs';

/** The built app on a port of its own; the same server as `npm start`. */
export interface AppServer {
  /** For example http://127.0.0.1:40123, with no last slash. */
  readonly origin: string;
  readonly port: number;
  /** Ends it at once; to the browser the network is gone. */
  readonly close: () => Promise<void>;
}

/** @param port 0 takes any free one; a given one brings a server back where it was */
export async function startApp(folder: string = DIST, port = 0): Promise<AppServer> {
  const server = createAppServer(folder);
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const bound = server.address();
  if (bound === null || typeof bound === 'string') throw new Error('the server must have a port');
  return {
    origin: `http://127.0.0.1:${bound.port}`,
    port: bound.port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
