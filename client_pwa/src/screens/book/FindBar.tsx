/** Finding a job among many: by words of its name or notes, in the order that is wanted. */

import type { BookEntry } from "../../book/store";

export type Order = "changed" | "name" | "created";

const ORDERS: readonly [Order, string][] = [
  ["changed", "Last changed first"],
  ["created", "Newest first"],
  ["name", "By name"],
];

interface Props {
  find: string;
  setFind(find: string): void;
  sort: Order;
  setSort(sort: Order): void;
  found: number;
}

export function FindBar({ find, setFind, sort, setSort, found }: Props) {
  return (
    <div class="find-bar">
      <label class="job-name">
        <span>Find a job</span>
        <input type="text" autocomplete="off" value={find} onInput={(event) => setFind(event.currentTarget.value)} />
      </label>
      <label class="job-name">
        <span>Order</span>
        <select class="entry-choice" value={sort} onChange={(event) => setSort(event.currentTarget.value as Order)}>
          {ORDERS.map(([order, words]) => (
            <option key={order} value={order}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <p class="unseen" role="status">
        {found === 1 ? "One job" : `${found} jobs`}
      </p>
    </div>
  );
}

/** The entries that hold all the words, the open job first. */
export function sorted(entries: readonly BookEntry[], find: string, order: Order, openId: string): BookEntry[] {
  const words = find.toLowerCase().split(/\s+/).filter(Boolean);
  const textOf = ({ reading }: BookEntry): string =>
    (reading.ok ? `${reading.job.name} ${reading.job.notes} ${typeof reading.job.inputs.bore === "string" ? reading.job.inputs.bore : ""}` : reading.name).toLowerCase();
  const found = words.length === 0 ? [...entries] : entries.filter((entry) => words.every((word) => textOf(entry).includes(word)));
  const nameOf = ({ reading }: BookEntry): string => (reading.ok ? reading.job.name : reading.name);
  const timeOf = ({ reading }: BookEntry): number => (reading.ok ? reading.job[order === "created" ? "created" : "changed"] : 0);
  found.sort((one, other) => (order === "name" ? nameOf(one).localeCompare(nameOf(other)) : timeOf(other) - timeOf(one)));
  return [...found.filter((entry) => entry.id === openId), ...found.filter((entry) => entry.id !== openId)];
}
