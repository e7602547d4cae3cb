import type { CustomScheme } from "electron";

const SCHEME = "shortslide";
const HOST = "app";

/** The address of the screen in the window. */
export const SCREEN_ADDRESS: string = `${SCHEME}://${HOST}/`;

/** The screen's own scheme: a proper origin, as https has, instead of files. */
export const appScheme: CustomScheme = {
  scheme: SCHEME,
  privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true },
};

/** Whether an address is of our own screen. */
export const isOurs = (address: string): boolean => {
  if (!URL.canParse(address)) {
    return false;
  }
  const { protocol, host } = new URL(address);
  return protocol === `${SCHEME}:` && host === HOST;
};
