import * as v from "valibot";
import { type Answer, type VerbName, verbs } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";

const problemSchema = v.object({
  code: v.picklist([
    "refused",
    "bad-argument",
    "not-found",
    "exists",
    "changed",
    "disk",
    "damaged",
    "unreachable",
    "bug",
  ]),
  says: v.string(),
  try: v.string(),
});

const answerSchema = v.variant("ok", [
  v.object({
    ok: v.literal(true),
    value: v.unknown(),
    remarks: v.optional(v.array(problemSchema)),
  }),
  v.object({ ok: v.literal(false), problem: problemSchema }),
]);

const notUnderstood: Answer<never> = {
  ok: false,
  problem: {
    code: "bug",
    says: words.host.notUnderstood,
    try: words.host.reload,
  },
};

/** What came back for a verb, checked by the table; anything else is a problem in words. */
export const readAnswer = (name: VerbName, raw: unknown): Answer<unknown> => {
  const answer = v.safeParse(answerSchema, raw);
  if (!answer.success) {
    return notUnderstood;
  }
  if (!answer.output.ok) {
    return answer.output;
  }
  const { remarks } = answer.output;
  const value = v.safeParse(verbs[name].result, answer.output.value);
  if (!value.success) {
    return notUnderstood;
  }
  return { ok: true, value: value.output, ...(remarks ? { remarks } : {}) };
};
