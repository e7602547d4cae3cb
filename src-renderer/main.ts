import { mount, unmount } from "svelte";
import { words } from "../src-shared/wordTable.ts";
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
    if (failure) say(failure, words.act.tryAgain, boot);
  } catch (thrown) {
    const what = thrown instanceof Error ? thrown.message : String(thrown);
    const advice = words.app.notStartedTry;
    // A script that has failed once is not fetched a second time by the same page.
    say({ says: words.app.notStarted(what), advice }, words.app.loadAgain, () => location.reload());
  }
};

await boot();
