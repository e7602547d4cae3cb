import { render } from "svelte/server";
import RouteTrouble from "../../src-renderer/parts/routeTrouble.svelte";
import StandTools from "../../src-renderer/parts/standTools.svelte";
import { readChart } from "../../src-shared/chart/readChart.ts";
import { sayAction } from "../../src-shared/wording/sayAction.ts";
import { sayWay } from "../../src-shared/wording/sayAim.ts";

/** What the program says in some of its rooms, with the words that it is built with. */
export const everySentence = (): readonly string[] => {
  const nothing = (): void => undefined;
  const tools = { onJam: nothing, onLargeType: nothing, onKeys: nothing };
  return [
    sayAction("barOn"),
    sayWay("let-one").says,
    ...readChart("Tempo: fast\n| G | X9 |").notes.flatMap((note) => [note.says, note.try]),
    ...[
      render(RouteTrouble, { props: { notes: [] } }),
      render(StandTools, { props: tools }),
    ].flatMap(({ body }) =>
      [...body.matchAll(/>([^<>]*\p{L}[^<>]*)<|aria-label="([^"]*)"/gu)].map(
        (match) => match[1] ?? match[2] ?? "",
      ),
    ),
  ];
};
