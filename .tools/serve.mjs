// Serves a built app from one folder, for a tablet to be loaded from. Node built-ins only.
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { SECURITY_HEADERS } from './headers.mjs';

/** @type {Record<string, string>} */
const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.jsonl': 'text/plain; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

/**
 * Where an address leads inside the served folder, or null where it leads outside or cannot be read.
 * @param {string} address
 */
function pathOf(address) {
  try {
    const { pathname } = new URL(address, 'http://any.invalid');
    const path = normalize(decodeURIComponent(pathname));
    return path.includes('\0') || path.split(sep).includes('..') ? null : path;
  } catch {
    return null;
  }
}

/**
 * A server of one folder; not yet listening.
 * @param {string} folder
 */
export function createAppServer(folder) {
  return createServer((request, response) => {
    /**
     * @param {number} status
     * @param {Record<string, string>} headers
     * @param {string | Buffer} body
     */
    const send = (status, headers, body) => {
      response.writeHead(status, {
        ...SECURITY_HEADERS,
        ...headers,
        'Content-Length': String(Buffer.byteLength(body)),
      });
      response.end(request.method === 'HEAD' ? undefined : body);
    };
    /**
     * @param {number} status
     * @param {string} text
     * @param {Record<string, string>} [more]
     */
    const refuse = (status, text, more = {}) =>
      send(
        status,
        { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store', ...more },
        `${text}\n`,
      );
    const answer = async () => {
      if (request.method !== 'GET' && request.method !== 'HEAD') {
        return refuse(405, 'Only reading is served here.', { Allow: 'GET, HEAD' });
      }
      const path = pathOf(request.url ?? '/');
      if (path === null) return refuse(400, 'That address cannot be read.');
      // A name with an extension is a file and exists or not; any other address is a screen of the app.
      const extension = extname(path);
      const file = extension === '' ? 'index.html' : path;
      const body = await readFile(join(folder, file)).catch(() => null);
      if (body === null) return refuse(404, 'No such file.');
      // Names under assets/ carry a hash of their content; all else must be asked for again.
      const fixed = path.startsWith(`${sep}assets${sep}`) && extension !== '';
      return send(
        200,
        {
          'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
          'Cache-Control': fixed ? 'public, max-age=31536000, immutable' : 'no-cache',
        },
        body,
      );
    };
    void answer();
  });
}

/**
 * Serves until the process is told to end. PORT and HOST are honoured.
 * @param {string} folder
 */
export function serve(folder) {
  const port = Number(process.env['PORT'] ?? 4173);
  const host = process.env['HOST'] ?? '127.0.0.1';
  const server = createAppServer(folder);
  server.on('error', (error) => {
    const taken = 'code' in error && error.code === 'EADDRINUSE';
    console.error(taken ? `Port ${port} is taken; set PORT to another.` : error.message);
    process.exitCode = 1;
  });
  server.listen(port, host, () => {
    const bound = server.address();
    const shown = bound !== null && typeof bound === 'object' ? bound.port : port;
    console.log(`Kneeline is at http://${host.includes(':') ? `[${host}]` : host}:${shown}/`);
  });
  const end = () => {
    server.close();
    server.closeAllConnections();
  };
  process.once('SIGTERM', end);
  process.once('SIGINT', end);
  return server;
}
