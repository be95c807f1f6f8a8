// What the built pages may do, for the page itself (vite.config.ts) and for whoever serves it.

/**
 * Whatever a page of the app may load: its own files, and pictures and papers that it made itself. What is not named is
 * refused. A text becomes a script or markup nowhere: the only policy of Trusted Types is the one of ui/own-script.ts.
 */
const allowed = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types leesbook',
];

/** In the page itself, so that it holds on every host. */
export const pagePolicy = allowed.join('; ');

/** What the app has no use for, so that no page of it can even ask. */
const unused = [
  'accelerometer',
  'bluetooth',
  'display-capture',
  'geolocation',
  'gyroscope',
  'hid',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'serial',
  'usb',
];

/**
 * What only a host can say: that nobody frames the app, that its workers are held to the same policy as its pages, and
 * which devices it may ask for. `npm start` sends these; the app works without them.
 */
export const headers = {
  'Content-Security-Policy': [...allowed, "frame-ancestors 'none'"].join('; '),
  'Permissions-Policy': ['camera=(self)', ...unused.map((name) => `${name}=()`)].join(', '),
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};
