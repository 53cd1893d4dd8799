import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createAppServer } from '../../.tools/serve.mjs';

let above = '';
let server: Server;
let origin = '';
let port = 0;

beforeAll(async () => {
  above = mkdtempSync(join(tmpdir(), 'kneeline-serve-'));
  const folder = join(above, 'dist');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(above, 'secret.txt'), 'outside');
  const files = {
    'index.html': '<title>Kneeline</title>',
    'worker.js': '0',
    'manifest.webmanifest': '{}',
    'flight.jsonl': '{}',
    'assets/index-a.js': '0',
    'assets/b612.woff2': 'f',
    'assets/index-a.css': 'p{}',
  };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  server = createAppServer(folder);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const bound = server.address();
  if (bound === null || typeof bound === 'string') throw new Error('the server must have a port');
  port = bound.port;
  origin = `http://127.0.0.1:${port}`;
});

afterAll(async () => {
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
  rmSync(above, { recursive: true, force: true });
});

/** Asks with the path as written: fetch would tidy it up first. */
function askRaw(path: string): Promise<{ status: number; body: string }> {
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port, path }, (answer) => {
      let body = '';
      answer.setEncoding('utf8').on('data', (part: string) => (body += part));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, body }));
    })
      .on('error', reject)
      .end();
  });
}

describe('the server', () => {
  it.each(['/', '/worker.js', '/assets/index-a.js', '/no-such-file.js'])(
    'isolates %s and lets it run no foreign script',
    async (path) => {
      const { headers } = await fetch(origin + path);
      const rules = (headers.get('content-security-policy') ?? '').split('; ');
      expect(rules).toEqual(
        expect.arrayContaining([
          "default-src 'none'",
          "script-src 'self'",
          "style-src 'self'",
          "connect-src 'self'",
          "worker-src 'self'",
          "manifest-src 'self'",
          "base-uri 'none'",
          "form-action 'none'",
          "frame-ancestors 'none'",
          "require-trusted-types-for 'script'",
          'trusted-types sw parser',
        ]),
      );
      expect(rules.join()).not.toContain('unsafe');
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
      expect(headers.get('cross-origin-embedder-policy')).toBe('require-corp');
    },
  );

  it.each([
    ['/', 'text/html; charset=utf-8'],
    ['/worker.js', 'text/javascript; charset=utf-8'],
    ['/manifest.webmanifest', 'application/manifest+json'],
    ['/flight.jsonl', 'text/plain; charset=utf-8'],
    ['/assets/b612.woff2', 'font/woff2'],
    ['/assets/index-a.css', 'text/css; charset=utf-8'],
  ])('names the type of %s', async (path, type) => {
    expect((await fetch(origin + path)).headers.get('content-type')).toBe(type);
  });

  it.each(['/', '/index.html', '/worker.js', '/manifest.webmanifest'])(
    'has %s asked for again each time',
    async (path) => {
      expect((await fetch(origin + path)).headers.get('cache-control')).toBe('no-cache');
    },
  );

  it('lets files with a hash in their name be kept for good', async () => {
    const { headers } = await fetch(`${origin}/assets/index-a.js`);
    expect(headers.get('cache-control')).toContain('immutable');
  });

  it('answers any screen with the page', async () => {
    const answer = await fetch(`${origin}/debrief/points?of=1`);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('<title>Kneeline</title>');
  });

  it('says that a file is not there, also under assets', async () => {
    expect((await fetch(`${origin}/gone.js`)).status).toBe(404);
    expect((await fetch(`${origin}/assets/index-b.js`)).status).toBe(404);
  });

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%2f..%2fsecret.txt',
  ])('keeps %s inside the folder', async (path) => {
    const { status, body } = await askRaw(path);
    expect([400, 404]).toContain(status);
    expect(body).not.toContain('outside');
  });

  it('refuses an address that cannot be read', async () => {
    expect((await askRaw('/%zz.js')).status).toBe(400);
    expect((await askRaw('/a%00.js')).status).toBe(400);
  });

  it('is for reading only', async () => {
    const answer = await fetch(origin, { method: 'PUT', body: 'x' });
    expect(answer.status).toBe(405);
    expect(answer.headers.get('allow')).toBe('GET, HEAD');
  });

  it('answers HEAD with the length and no body', async () => {
    const answer = await fetch(`${origin}/index.html`, { method: 'HEAD' });
    expect(answer.headers.get('content-length')).toBe('23');
    expect(await answer.text()).toBe('');
  });
});
