/** Python source without comments, docstrings, needless spaces and the comma behind the last of several, strings that
 * stand side by side as one: the phone downloads only what runs. Every name and every value stays as it is.
 *
 * Works on logical lines: strings (also triple-quoted) and brackets are followed, so that a "#" inside
 * a string stays. A block that held nothing but its docstring gets a `pass`. */

interface LogicalLine {
  indent: string;
  text: string;
  onlyString: boolean;
}

interface Group {
  commas: number;
  /** Whether a single entry with a comma is still one entry: of a call, a list, a set. */
  plain: boolean;
}

const KEYWORD = /(^|\W)(and|assert|elif|else|for|if|in|is|lambda|not|or|raise|return|while|yield)$/;
const STRING_START = /^([rRbBfFuU]{0,2})("""|'''|"|')/;

export function stripPython(source: string): string {
  const lines = logicalLines(source.replace(/\r\n/g, "\n"));
  const kept: string[] = [];
  // One space a level: how far each open block is indented in the source.
  const blocks: number[] = [];
  lines.forEach((line, index) => {
    const width = line.indent.length;
    while (blocks.length > 0 && blocks[blocks.length - 1]! > width) blocks.pop();
    if (width > (blocks[blocks.length - 1] ?? 0)) blocks.push(width);
    const indent = " ".repeat(blocks.length);
    if (!line.onlyString) {
      kept.push(indent + line.text);
      return;
    }
    const opensBlock = index > 0 && lines[index - 1]!.text.endsWith(":");
    const next = lines[index + 1];
    if (opensBlock && (next === undefined || next.indent.length < width)) kept.push(indent + "pass");
  });
  return kept.join("\n") + "\n";
}

function logicalLines(source: string): LogicalLine[] {
  const lines: LogicalLine[] = [];
  let position = 0;
  let text = "";
  let indent: string | null = null;
  const groups: Group[] = [];
  let strings = 0;
  let other = false;
  // Whether what was written last is a string between double quotes, that another may be joined to.
  let joins = false;

  const finish = (): void => {
    const trimmed = text.trimEnd();
    if (trimmed !== "") {
      lines.push({ indent: indent ?? "", text: trimmed, onlyString: strings > 0 && !other });
    }
    text = "";
    indent = null;
    strings = 0;
    other = false;
    joins = false;
  };

  while (position < source.length) {
    const rest = source.slice(position, position + 5);
    const character = source[position]!;
    if (indent === null) {
      const blank = /^[ \t]*/.exec(source.slice(position, position + 200))![0];
      indent = blank;
      position += blank.length;
      continue;
    }
    if (character === "#") {
      const end = source.indexOf("\n", position);
      position = end < 0 ? source.length : end;
      continue;
    }
    const afterWord = /[A-Za-z0-9_]$/.test(text);
    const start = STRING_START.exec(rest);
    if (start && !(afterWord && start[1] !== "")) {
      const end = stringEnd(source, position + start[0].length, start[2]!);
      const written = source.slice(position, end);
      const plain = start[1] === "" && start[2] === '"';
      text = joins && plain ? text.trimEnd().slice(0, -1) + written.slice(1) : text + written;
      // A number of digits that would take in the first of the next.
      joins = plain && !/\\[0-7]{1,2}"$/.test(written);
      position = end;
      strings += 1;
      continue;
    }
    if (character === "\\" && source[position + 1] === "\n") {
      text += " ";
      position += 2;
      continue;
    }
    if (character === "\n") {
      position += 1;
      if (groups.length > 0) {
        // Inside brackets a line end is only white space.
        const blank = /^[ \t]*/.exec(source.slice(position, position + 200))![0];
        position += blank.length;
        if (needsSpace(text, source[position])) text += " ";
      } else {
        finish();
      }
      continue;
    }
    if (character === " " || character === "\t") {
      if (needsSpace(text, source[position + 1])) text += " ";
      position += 1;
      continue;
    }
    if ("([{".includes(character)) groups.push({ commas: 0, plain: plainWithOne(character, text) });
    if (character === "," && groups.length > 0) groups[groups.length - 1]!.commas += 1;
    if (")]}".includes(character)) {
      const group = groups.pop();
      if (text.endsWith(",") && group && (group.commas > 1 || group.plain)) text = text.slice(0, -1);
    }
    if (!/\s/.test(character)) {
      other = true;
      joins = false;
    }
    text += character;
    position += 1;
  }
  finish();
  return lines;
}

/** Whether a group that opens here is the same with a comma behind its only entry: a tuple or an index would not be. */
function plainWithOne(bracket: string, before: string): boolean {
  const called = /[\w)\]]$/.test(before) && !KEYWORD.test(before);
  return bracket === "{" || (bracket === "(" ? called : !called);
}

/** Between two words (or a word and a string) a space parts them; beside any sign it is only for the eye. */
function needsSpace(before: string, next: string | undefined): boolean {
  return next !== undefined && /[\w"']$/.test(before) && /[\w"'\\]/.test(next);
}

function stringEnd(source: string, from: number, quote: string): number {
  let position = from;
  while (position < source.length) {
    if (source[position] === "\\") {
      position += 2;
    } else if (source.startsWith(quote, position)) {
      return position + quote.length;
    } else {
      position += 1;
    }
  }
  throw new Error("a string in the core is not closed");
}
