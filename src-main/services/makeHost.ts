import { join } from "node:path";
import * as v from "valibot";
import {
  type Answer,
  type ResultOf,
  type Verb,
  type VerbName,
  verbs,
} from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "./answer.ts";
import { type Disk, realDisk } from "./disk.ts";
import { diskProblem, isSystemError } from "./diskProblem.ts";
import { loggingTo, makeErrorLog } from "./errorLog.ts";
import { makeOneAtATime } from "./oneAtATime.ts";
import { makePatterns } from "./patterns.ts";
import { makePracticeLog } from "./practiceLog.ts";
import { makeRemarks } from "./remarks.ts";
import { makeSettings } from "./settings.ts";
import { makeSongbook } from "./songbook.ts";

/** The machine as whatever carries the calls sees it: an argument is anything until it is checked. */
export type OpenHost = {
  readonly [Name in VerbName]: (argument: unknown) => Promise<Answer<ResultOf<Name>>>;
};

/** The whole table over one folder. Every failure is answered; none is thrown. */
export const makeHost = (home: string, outer: Disk = realDisk): OpenHost => {
  const errors = makeErrorLog(home);
  const disk: Disk = { ...outer, log: loggingTo(errors, outer.log) };
  // Calls run one after the other, so what is remarked belongs to the call that runs.
  const remarks = makeRemarks();
  const songbook = makeSongbook(join(home, "songbook"), disk, remarks.add);
  const settings = makeSettings(home, disk, remarks.add);
  const patterns = makePatterns(home, disk, remarks.add);
  const practiceLog = makePracticeLog(home);
  // Two calls on one song (an autosave and a removal, say) must not mix.
  const inTurn = makeOneAtATime();

  const verb =
    <Argument, Result>(
      { argument: schema }: Verb<Argument, Result>,
      work: (argument: Argument) => Promise<Answer<Result>>,
    ) =>
    async (argument: unknown): Promise<Answer<Result>> => {
      const read = v.safeParse(schema, argument);
      if (!read.success) {
        const [issue] = read.issues;
        return failed("bad-argument", words.host.cannotBeDone(issue.message), words.host.reload);
      }
      try {
        return await inTurn(async () => {
          remarks.take();
          const answer = await work(read.output);
          const said = remarks.take();
          return answer.ok && said.length > 0 ? { ...answer, remarks: said } : answer;
        });
      } catch (error) {
        if (isSystemError(error)) {
          return { ok: false, problem: diskProblem(error) };
        }
        disk.log(error instanceof Error ? (error.stack ?? error.message) : String(error));
        return failed("bug", words.host.wentWrong, words.host.wentWrongTry);
      }
    };

  return {
    listSongs: verb(verbs.listSongs, () => songbook.list()),
    readSong: verb(verbs.readSong, ({ id }) => songbook.read(id)),
    createSong: verb(verbs.createSong, ({ title, text, settings: kept }) =>
      songbook.create(title, text, kept),
    ),
    writeSong: verb(verbs.writeSong, (song) => songbook.write(song)),
    removeSong: verb(verbs.removeSong, ({ id }) => songbook.remove(id)),
    restoreSong: verb(verbs.restoreSong, ({ ticket }) => songbook.restore(ticket)),
    listVersions: verb(verbs.listVersions, ({ id }) => songbook.listVersions(id)),
    readVersion: verb(verbs.readVersion, ({ id, version }) => songbook.readVersion(id, version)),
    mendSong: verb(verbs.mendSong, ({ id }) => songbook.mend(id)),
    noteError: verb(verbs.noteError, async ({ says, at }) => {
      errors.write("screen", `${says}\n${at}`);
      return given(null);
    }),
    readErrors: verb(verbs.readErrors, async () => given(await errors.read())),
    readPreferences: verb(verbs.readPreferences, async () => given(await settings.read())),
    writePreferences: verb(verbs.writePreferences, async (preferences) => {
      await settings.write(preferences);
      return given(null);
    }),
    readPatterns: verb(verbs.readPatterns, () => patterns.read()),
    writePatterns: verb(verbs.writePatterns, async (own) => {
      await patterns.write(own);
      return given(null);
    }),
    readLog: verb(verbs.readLog, async () => given(await practiceLog.read())),
    appendLog: verb(verbs.appendLog, async (line) => {
      await practiceLog.append(line);
      return given(null);
    }),
  };
};
