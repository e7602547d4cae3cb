import * as v from "valibot";
import { type ActionName, actionNames, actionTable } from "./actionTable.ts";
import { sameTrigger, type Trigger, triggerSchema } from "./trigger.ts";

/** A trigger that does something else than usual; null is nothing. */
export type Rebinding = { readonly trigger: Trigger; readonly action: ActionName | null };

/**
 * What the player has changed. Only that is kept, so that an action which comes later has its usual
 * key; and each trigger stands once, so that no press can mean two things.
 */
export type Rebindings = readonly Rebinding[];

const usualAction = (trigger: Trigger): ActionName | null =>
  trigger.kind === "key"
    ? (actionTable.find(({ keys }) => keys.includes(trigger.key))?.name ?? null)
    : null;

/**
 * What a trigger does; null where it does nothing.
 * @example actionFor([], { kind: "key", key: "l" }) // => "loopHere"
 * @example actionFor([{ trigger: { kind: "key", key: "l" }, action: "stop" }], { kind: "key", key: "l" }) // => "stop"
 */
export const actionFor = (own: Rebindings, trigger: Trigger): ActionName | null => {
  const changed = own.find((each) => sameTrigger(each.trigger, trigger));
  return changed ? changed.action : usualAction(trigger);
};

/**
 * Everything that does an action, the usual keys first.
 * @example triggersFor([], "playPause").length // => 2
 */
export const triggersFor = (own: Rebindings, action: ActionName): readonly Trigger[] => {
  const keys = actionTable.find(({ name }) => name === action)?.keys ?? [];
  const usual = keys.map((key): Trigger => ({ kind: "key", key }));
  const still = usual.filter((trigger) => actionFor(own, trigger) === action);
  const added = own.filter((each) => each.action === action).map(({ trigger }) => trigger);
  return [...still, ...added];
};

/**
 * With a trigger given to an action, or to none; taken from the one that had it.
 * @example rebind([], { kind: "key", key: "l" }, "loopHere") // => []
 */
export const rebind = (
  own: Rebindings,
  trigger: Trigger,
  action: ActionName | null,
): Rebindings => {
  const others = own.filter((each) => !sameTrigger(each.trigger, trigger));
  return action === usualAction(trigger) ? others : [...others, { trigger, action }];
};

/** Checks what the player has changed as it comes from disk or over the wire. */
export const rebindingsSchema: v.GenericSchema<unknown, Rebindings> = v.pipe(
  v.array(v.object({ trigger: triggerSchema, action: v.nullable(v.picklist(actionNames)) })),
  v.maxLength(500),
);
