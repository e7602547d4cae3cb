/** fetch as a page of that origin calls it: a browser adds the Origin header by itself. */
export const pageFetch =
  (origin: string): typeof globalThis.fetch =>
  (input, init) => {
    const headers = new Headers(init?.headers);
    headers.set("Origin", origin);
    return fetch(input, { ...init, headers });
  };
