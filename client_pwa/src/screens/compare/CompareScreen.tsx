/** The open job beside another of the book: what was entered otherwise, and what comes of it. */

import { useEffect, useState } from "preact/hooks";
import { system } from "../../base/settings";
import type { Job } from "../../book/job";
import { shopInputs } from "../../book/shop";
import { fieldsOf } from "../../engine/tables";
import { WORD } from "../../figures/Findings";
import { jobsOfTheBook, workedOf } from "../../sheet/other_jobs";
import type { Worked } from "../../sheet/other_jobs";
import { addJob } from "../../sheet/session";
import { copyOf } from "../../book/job";
import { job } from "../../sheet/sheet";
import { checksApart, entriesApart, figuresOf } from "./differences";
import type { Row } from "./differences";

export function CompareScreen() {
  const others = jobsOfTheBook().filter((each) => each.id !== job.value.id);
  const [picked, setPicked] = useState("");
  const other = others.find((each) => each.id === picked) ?? others[0];
  const mine = useWorked(job.value, "compare@open");
  const theirs = useWorked(other, "compare@other");
  return (
    <div class="compare">
      <section class="card" aria-label="The two jobs">
        <h2>{job.value.name}, and beside it</h2>
        {other ? (
          <label class="job-name">
            <span>The other job</span>
            <select class="entry-choice" value={other.id} onChange={(event) => setPicked(event.currentTarget.value)}>
              {others.map((each) => (
                <option key={each.id} value={each.id}>
                  {each.name}
                </option>
              ))}
            </select>
          </label>
        ) : (
          <p>There is no other job in the book. Make a copy of this one, change it, and both stand here side by side.</p>
        )}
        <p>
          <button type="button" onClick={() => void addJob(copyOf(job.peek(), `${job.peek().name}, copy`), "ring")}>
            Copy this job and change the copy
          </button>
        </p>
      </section>
      {[mine, theirs].map((each, at) =>
        each?.words ? (
          <p class="status status-fault" role="status" key={at}>
            {(at === 0 ? job.value : other)?.name}: {each.words}
          </p>
        ) : null,
      )}
      {other && mine?.answer && theirs?.answer && <Both left={job.value} right={other} mine={mine} theirs={theirs} />}
    </div>
  );
}

function Both({ left, right, mine, theirs }: { left: Job; right: Job; mine: Worked; theirs: Worked }) {
  const names = fieldsOf("sizing").map((field) => field.name);
  const { apart, alike } = figuresOf(mine.answer!, theirs.answer!, system.value);
  const heads = { left: left.name, right: right.name };
  return (
    <>
      <Rows title="Entered otherwise" heads={heads} rows={entriesApart(left.inputs, right.inputs, names)} none="The same was entered for both." />
      <Rows title="Checks" heads={heads} rows={checksApart(mine.answer!.findings, theirs.answer!.findings, (finding) => WORD[finding.outcome])} none="Every check says the same of both." />
      <Rows title="Figures" heads={heads} rows={apart} none="Every figure is the same." />
      {alike.length > 0 && (
        <details class="card">
          <summary>{alike.length === 1 ? "One figure is" : `${alike.length} figures are`} the same in both</summary>
          <ul>
            {alike.map((row) => (
              <li key={row.label}>
                {row.label}: {row.left}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Rows({ title, heads, rows, none }: { title: string; heads: { left: string; right: string }; rows: readonly Row[]; none: string }) {
  return (
    <section class="card" aria-label={title}>
      <h2>{title}</h2>
      {rows.length === 0 ? (
        <p>{none}</p>
      ) : (
        <table class="sizes">
          <thead>
            <tr>
              <td />
              <th scope="col">{heads.left}</th>
              <th scope="col">{heads.right}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.label}>
                <th scope="row">{row.label}</th>
                <td>{row.left}</td>
                <td>{row.right}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** The sizing of a job, asked for again when it or the shop changes. */
function useWorked(one: Job | undefined, key: string): Worked | undefined {
  const [worked, setWorked] = useState<{ of: string; is: Worked } | undefined>(undefined);
  const question = JSON.stringify([one?.inputs, shopInputs.value]);
  useEffect(() => {
    if (!one) return undefined;
    let old = false;
    void workedOf(one, "sizing", key).then((is) => {
      if (!old) setWorked({ of: question, is });
    });
    return () => {
      old = true;
    };
  }, [question]);
  return worked?.of === question ? worked.is : undefined;
}
