// What the server says about every page. The build repeats the content policy in the page, for a plain web server.

/** @param {string} connect what the app may talk to */
const contentPolicy = (connect) => [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  `connect-src ${connect}`,
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types sw parser',
];

/** Sent with every answer. Together the last three make the page cross-origin isolated. */
export const SECURITY_HEADERS = {
  'Content-Security-Policy': [...contentPolicy("'self'"), "frame-ancestors 'none'"].join('; '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/** The policy as it stands in the page. A server may narrow where the app talks to; a page on a plain one may not. */
export const PAGE_POLICY = contentPolicy("'self' https:").join('; ');
