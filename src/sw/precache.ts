/** One file of the build. The build writes the list into the worker; the revision is the SHA-256 of the bytes, in hex. */
export interface ListedFile {
  readonly url: string;
  readonly revision: string;
}

export type FetchFile = (url: string) => Promise<Response>;

/** A listed file whose bytes are the ones that the build wrote. */
export interface VerifiedFile {
  readonly url: string;
  readonly response: Response;
}

async function sha256Hex(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * Fetches every listed file and compares its bytes with the list, before anything is kept.
 *
 * @throws Error naming the first file that did not come, or came with other bytes: a half-new app never starts
 */
export async function fetchVerified(
  files: readonly ListedFile[],
  fetchFile: FetchFile,
): Promise<readonly VerifiedFile[]> {
  return Promise.all(
    files.map(async ({ url, revision }) => {
      const answer = await fetchFile(url);
      if (!answer.ok) throw new Error(`a listed file must be served, got ${answer.status}: ${url}`);
      const bytes = await answer.arrayBuffer();
      const found = await sha256Hex(bytes);
      if (found !== revision) {
        throw new Error(`a listed file must have the hash ${revision}, got ${found}: ${url}`);
      }
      // A fresh response is neither redirected nor encoded, either of which a navigation would refuse later.
      const headers = new Headers(answer.headers);
      headers.delete('content-encoding');
      headers.delete('content-length');
      return { url, response: new Response(bytes, { status: 200, headers }) };
    }),
  );
}

/** What of a request decides whether the worker answers it. */
export interface Asked {
  readonly method: string;
  readonly mode: string;
  readonly url: string;
}

/**
 * The listed file that answers a request, or null where the network must: foreign origins, writes, the share.
 *
 * @param urls absolute addresses of the listed files
 * @param scope absolute address that the app lives under, with its last slash
 */
export function fileFor(asked: Asked, urls: ReadonlySet<string>, scope: string): string | null {
  if (asked.method !== 'GET' || !asked.url.startsWith(scope)) return null;
  const url = new URL(asked.url);
  url.hash = '';
  if (urls.has(url.href)) return url.href;
  if (asked.mode !== 'navigate') return null;
  url.search = '';
  if (urls.has(url.href)) return url.href;
  // A name with an extension is a file, for example one on the share beside the app; anything else is a screen.
  const lastSegment = url.pathname.slice(url.pathname.lastIndexOf('/') + 1);
  return lastSegment.includes('.') ? null : new URL('index.html', scope).href;
}
