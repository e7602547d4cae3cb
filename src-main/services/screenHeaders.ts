/**
 * What the screen may do, whoever serves it: nothing but its own files. Inline styles are for
 * Svelte's transitions and style directives, blob: workers for the sound's ticker.
 */
const CONTENT_POLICY: string = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "font-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "worker-src blob:",
  "media-src 'self' blob:",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

/** Headers of every answer, in the window and in the browser. */
export const screenHeaders: Readonly<Record<string, string>> = Object.freeze({
  "Content-Security-Policy": CONTENT_POLICY,
  "X-Content-Type-Options": "nosniff",
  // Not "no-referrer": that would make the Origin of some same-origin requests "null".
  "Referrer-Policy": "same-origin",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy":
    "camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=(), midi=(self)",
});
