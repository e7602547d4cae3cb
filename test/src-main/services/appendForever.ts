// A process that appends to a practice log until it is killed, and says each round that is safe.
import { makePracticeLog } from "../../../src-main/services/practiceLog.ts";
import { loggedRound } from "../../laws/loggedRound.ts";

const [home = "", name = ""] = process.argv.slice(2);
const log = makePracticeLog(home);
for (let count = 0; ; count += 1) {
  const id = `${name}-${count}`;
  await log.append({ version: 1, kind: "round", ...loggedRound(id) });
  process.stdout.write(`${id}\n`);
}
