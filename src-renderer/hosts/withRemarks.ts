import { type Host, type Problem, verbNames } from "../../src-shared/host.ts";

/** The same host; what its answers remark is told to `tell`, whoever asked. */
export const withRemarks = (host: Host, tell: (remark: Problem) => void): Host => {
  const telling = Object.fromEntries(
    verbNames.map((name) => {
      const call: (argument: never) => ReturnType<Host[typeof name]> = host[name];
      return [
        name,
        async (argument: never) => {
          const answer = await call(argument);
          if (answer.ok) answer.remarks?.forEach(tell);
          return answer;
        },
      ];
    }),
  );
  // Each verb is the host's own with something beside it; a loop cannot say that in types.
  return telling as unknown as Host;
};
