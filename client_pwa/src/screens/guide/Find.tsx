/** Finds entries of the guide by words of their names or of what they say. */

import { useRef } from "preact/hooks";
import { labelOf, sentence } from "../../engine/labels";
import { GuideLink } from "../../figures/GuideLink";
import { reference } from "../../figures/reference";
import { found } from "./found";
import type { Entry } from "./found";
import { operations } from "./operations";
import { ARTICLES, GAPS, GAUGING, PARTS, topicOfWord, TWO_GAPS, WORDS } from "./texts";

interface Props {
  wanted: string;
  setWanted(wanted: string): void;
  /** Called when one of the list is opened. */
  open(): void;
}

export function Find({ wanted, setWanted, open }: Props) {
  const list = useRef<HTMLUListElement>(null);
  const entries = wanted.trim() === "" ? undefined : found(all(), wanted);
  return (
    <search class="guide-find">
      <label class="job-name">
        <span>Find in the guide</span>
        <input
          type="text"
          autocomplete="off"
          enterkeyhint="search"
          value={wanted}
          onInput={(event) => setWanted(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === "Escape") setWanted("");
            if (event.key === "Enter") list.current?.querySelector("a")?.focus();
          }}
        />
      </label>
      <p role="status">{entries && counted(entries.length)}</p>
      {entries && (
        <ul ref={list}>
          {entries.map(({ topic, name, part, text }) => (
            <li key={topic} class="guide-entry">
              <GuideLink topic={topic} onClick={open}>
                {name}
              </GuideLink>
              <small>{part}</small>
              <p>{text}</p>
            </li>
          ))}
        </ul>
      )}
    </search>
  );
}

function counted(count: number): string {
  if (count === 0) return "Nothing found. Try one short word.";
  return count === 1 ? "One entry found." : `${count} entries found.`;
}

/** All entries, in the order of the guide. */
function all(): Entry[] {
  return [
    { topic: "gauge", name: ARTICLES.gauge, part: "Article", text: GAUGING.join(" ") },
    { topic: "gaps", name: ARTICLES.gaps, part: "Article", text: `${GAPS.join(" ")} ${TWO_GAPS}` },
    ...operations.value.map(({ operation: { key, title, text } }) => ({ topic: `operation-${key}`, name: title, part: PARTS.operations, text })),
    ...(reference.value?.checks ?? []).map(({ check, judges }) => ({ topic: `check-${check}`, name: labelOf(check), part: PARTS.checks, text: sentence(judges) })),
    ...(reference.value?.figures ?? []).map(({ name, label, meaning }) => ({ topic: `figure-${name}`, name: label, part: PARTS.figures, text: meaning && sentence(meaning) })),
    ...Object.entries(WORDS).map(([word, meaning]) => ({ topic: topicOfWord(word), name: word, part: PARTS.words, text: meaning })),
  ];
}
