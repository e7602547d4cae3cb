import { mount, unmount } from "svelte";
import { takeToken } from "./hosts/takeToken.ts";
import { useLaunchCode } from "./hosts/useLaunchCode.ts";
import ProblemView from "./parts/problemView.svelte";
import type { NotStarted } from "./start.ts";
import "./theme/index.css";

// Before anything is waited for: the secret must not stand in the address longer than need be.
takeToken(window);
const launched = useLaunchCode({
  location,
  history,
  sessionStorage,
  fetch: (input, init) => fetch(input, init),
});

const target = document.getElementById("app");
if (!target) throw new Error("index.html has no element with the id app");

/** Shows why there is no app, with a way on. */
const say = (failure: NotStarted, label: string, onAct: () => void): void => {
  const run = (): void => void unmount(said).then(onAct);
  const said = mount(ProblemView, { target, props: { ...failure, actions: [{ label, run }] } });
};

const boot = async (): Promise<void> => {
  try {
    const [refusal, { start }] = await Promise.all([launched, import("./start.ts")]);
    const failure = refusal ?? (await start(target));
    if (failure) say(failure, "Try again", boot);
  } catch (thrown) {
    const what = thrown instanceof Error ? thrown.message : String(thrown);
    const advice = "If loading the page again does not help, it is a mistake in Shortslide.";
    // A script that has failed once is not fetched a second time by the same page.
    say({ says: `Shortslide could not start: ${what}`, advice }, "Load again", () =>
      location.reload(),
    );
  }
};

await boot();
