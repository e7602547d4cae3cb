/** Under this name the tab keeps its token. */
export const KEPT_AS = "shortslide.token";
const FRAGMENT = /^#token=([A-Za-z0-9_-]+)$/u;

/** What of the browser holds the token. */
export type TokenPlaces = {
  readonly location: Pick<Location, "hash" | "pathname" | "search">;
  readonly history: Pick<History, "replaceState">;
  readonly sessionStorage: Pick<Storage, "getItem" | "setItem">;
};

/**
 * The secret of the local server: from the address' fragment when the page is opened, where it is
 * then taken away; from what the tab keeps when it is reloaded. Empty where there is none, which
 * the server refuses in words.
 */
export const takeToken = ({ location, history, sessionStorage }: TokenPlaces): string => {
  const token = FRAGMENT.exec(location.hash)?.[1];
  if (token === undefined) {
    return sessionStorage.getItem(KEPT_AS) ?? "";
  }
  sessionStorage.setItem(KEPT_AS, token);
  history.replaceState(null, "", `${location.pathname}${location.search}`);
  return token;
};
