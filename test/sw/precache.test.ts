import { describe, expect, it } from 'vitest';
import { fetchVerified, fileFor } from '../../src/sw/precache.ts';

// SHA-256 of "abc": FIPS 180-4 example value, published by NIST.
const ABC = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const SCOPE = 'https://kneeline.example/app/';
const FILES = [
  { url: `${SCOPE}index.html`, revision: ABC },
  { url: `${SCOPE}assets/index-a.js`, revision: ABC },
];

const serving = (answers: Record<string, () => Response>) => (url: string) => {
  const answer = answers[url.slice(SCOPE.length)];
  return answer === undefined ? Promise.reject(new Error('no network')) : Promise.resolve(answer());
};

describe('fetching a build', () => {
  it('gives every file with its own headers', async () => {
    const fetchFile = serving({
      'index.html': () => new Response('abc', { headers: { 'content-type': 'text/html' } }),
      'assets/index-a.js': () => new Response('abc', { headers: { 'content-encoding': 'gzip' } }),
    });
    const verified = await fetchVerified(FILES, fetchFile);
    expect(verified.map(({ url }) => url)).toEqual(FILES.map(({ url }) => url));
    const [page, script] = verified.map(({ response }) => response);
    expect(await page?.text()).toBe('abc');
    expect(page?.headers.get('content-type')).toBe('text/html');
    expect(script?.headers.has('content-encoding')).toBe(false);
  });

  it.each([
    ['is not served', () => new Response('abc', { status: 404 }), /must be served, got 404/],
    ['holds other bytes', () => new Response('abd'), /must have the hash ba78/],
    ['is cut short', () => new Response('ab'), /must have the hash ba78/],
  ])('gives nothing when one file %s', async (_, answer, message) => {
    const fetchFile = serving({
      'index.html': () => new Response('abc'),
      'assets/index-a.js': answer,
    });
    await expect(fetchVerified(FILES, fetchFile)).rejects.toThrow(message);
  });

  it('gives nothing when the network goes', async () => {
    const fetchFile = serving({ 'index.html': () => new Response('abc') });
    await expect(fetchVerified(FILES, fetchFile)).rejects.toThrow('no network');
  });
});

describe('the file that answers a request', () => {
  const urls = new Set(FILES.map(({ url }) => url));
  const answering = (path: string, mode = 'navigate', method = 'GET') =>
    fileFor({ url: new URL(path, SCOPE).href, mode, method }, urls, SCOPE);
  const page = `${SCOPE}index.html`;

  it.each([
    ['the start', '', page],
    ['the start with a question', '?from=home', page],
    ['a screen', 'debrief/points', page],
    ['a screen with a fragment', 'debrief#points', page],
    ['the page by its name', 'index.html?a=1', page],
    ['a file beside the app', 'share/flight.jsonl', null],
    ['an address above the app', '../other/', null],
    ['another origin', 'https://elsewhere.example/app/', null],
  ])('a window that opens %s', (_, path, expected) => {
    expect(answering(path)).toBe(expected);
  });

  it.each([
    ['a listed file', 'assets/index-a.js', 'GET', `${SCOPE}assets/index-a.js`],
    ['a file that is not listed', 'assets/index-b.js', 'GET', null],
    ['a listed name with a question', 'assets/index-a.js?v=2', 'GET', null],
    ['the folder of the share', 'share/', 'GET', null],
    ['a listed file, to change it', 'index.html', 'PUT', null],
  ])('a page that asks for %s', (_, path, method, expected) => {
    expect(answering(path, 'cors', method)).toBe(expected);
  });
});
