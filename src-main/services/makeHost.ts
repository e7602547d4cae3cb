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
import { makeBook } from "./book.ts";
import { type Disk, realDisk } from "./disk.ts";
import { diskProblem, isSystemError } from "./diskProblem.ts";
import { loggingTo, makeErrorLog } from "./errorLog.ts";
import { type HandedFiles, makeHandedFiles } from "./handedFiles.ts";
import { refuseNewer } from "./newerFile.ts";
import { makeOneAtATime } from "./oneAtATime.ts";
import { makePatterns } from "./patterns.ts";
import { makePracticeLog } from "./practiceLog.ts";
import { makeRemarks } from "./remarks.ts";
import { makeSettings } from "./settings.ts";

/** The machine as whatever carries the calls sees it: an argument is anything until it is checked. */
export type OpenHost = {
  readonly [Name in VerbName]: (argument: unknown) => Promise<Answer<ResultOf<Name>>>;
};

/** The whole table over one folder. Every failure is answered; none is thrown. */
export const makeHost = (
  home: string,
  outer: Disk = realDisk,
  handed: HandedFiles = makeHandedFiles(),
): OpenHost => {
  const errors = makeErrorLog(home);
  const disk: Disk = { ...outer, log: loggingTo(errors, outer.log) };
  // Calls run one after the other, so what is remarked belongs to the call that runs.
  const remarks = makeRemarks();
  const songbook = makeBook(home, disk, remarks.add);
  const settings = makeSettings(home, disk, remarks.add);
  const preferencesPath = join(home, "preferences.json");
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
    listRemoved: verb(verbs.listRemoved, () => songbook.listRemoved()),
    eraseRemoved: verb(verbs.eraseRemoved, ({ tickets }) => songbook.erase(tickets)),
    settleSong: verb(verbs.settleSong, ({ id }) => songbook.settle(id)),
    markOpened: verb(verbs.markOpened, ({ id }) => songbook.shelf.opened(id)),
    readShelf: verb(verbs.readShelf, () => songbook.shelf.read()),
    writeShelf: verb(verbs.writeShelf, (shelf) => songbook.shelf.write(shelf)),
    takeFiles: verb(verbs.takeFiles, () => handed.take()),
    readPreferences: verb(verbs.readPreferences, async () => {
      const known = await refuseNewer(preferencesPath, 1);
      return known.ok ? given(await settings.read()) : known;
    }),
    writePreferences: verb(verbs.writePreferences, async (preferences) => {
      const known = await refuseNewer(preferencesPath, 1);
      if (known.ok) {
        await settings.write(preferences);
      }
      return known;
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
