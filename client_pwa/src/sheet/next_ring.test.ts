import { expect, test } from "vitest";
import { newJob } from "../book/job";
import { forNextRing } from "./next_ring";

test("what was measured goes into the notes, and the card starts afresh", () => {
  const before = { ...newJob("Winch", { bore: "80 mm", measured_free_gap: "6,1 mm", measured_closed_gap: "0.5 mm" }), notes: "Liner by hand.", done: ["turn"] };
  const after = { ...before, ...forNextRing(before, 0.67756, "3 May 2031") };
  expect(after.inputs).toEqual({ bore: "80 mm", relief: "0.67756" });
  expect(after.notes.split("\n")[0]).toBe("Liner by hand.");
  expect(after.notes).toContain("3 May 2031: ");
  expect(after.notes).toContain("6,1 mm");
  expect(after.notes).toContain("0.5 mm");
  expect(after.done).toEqual([]);
  // Nothing of the job before has changed.
  expect(before.inputs).toHaveProperty("measured_free_gap");
});
