const LOOK_MS = 500;

/**
 * Ends this program, as SIGTERM does, when the npm that runs it is gone. npm hands SIGTERM to the
 * shell between the two, and that ends without telling us.
 */
export const endWithNpm = () => {
  if (process.env.npm_lifecycle_event === undefined || process.platform === "win32") {
    return;
  }
  const shell = process.ppid;
  const look = setInterval(() => {
    if (process.ppid !== shell) {
      clearInterval(look);
      process.kill(process.pid, "SIGTERM");
    }
  }, LOOK_MS);
  look.unref();
};
