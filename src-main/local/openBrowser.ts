/** What decides whether there is a browser to open. */
export type Desk = {
  readonly platform: NodeJS.Platform;
  readonly env: {
    readonly CI?: string | undefined;
    readonly DISPLAY?: string | undefined;
    readonly WAYLAND_DISPLAY?: string | undefined;
  };
};

/** Opens an address in the user's browser; rejects where that fails. */
export type OpenAddress = (address: string) => Promise<void>;

const openByPackage: OpenAddress = async (address) => {
  const { default: open } = await import("open");
  await open(address);
};

const isSet = (value: string | undefined): boolean => value !== undefined && value !== "";

const whyNot = ({ platform, env }: Desk): string | null => {
  if (isSet(env.CI)) {
    return "CI is set";
  }
  const hasNoDisplay = platform === "linux" && !isSet(env.DISPLAY) && !isSet(env.WAYLAND_DISPLAY);
  return hasNoDisplay ? "there is no display" : null;
};

/** Opens the default browser. Answers why it did not, in words, or null where it did. */
export const openBrowser = async (
  address: string,
  desk: Desk,
  openAddress: OpenAddress = openByPackage,
): Promise<string | null> => {
  const reason = whyNot(desk);
  if (reason !== null) {
    return reason;
  }
  try {
    await openAddress(address);
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
};
