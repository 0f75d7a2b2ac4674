/** Python source without comments, docstrings and needless spaces, so that the phone downloads only what
 * runs. Every name and every string stays as it is.
 *
 * Works on logical lines: strings (also triple-quoted) and brackets are followed, so that a "#" inside
 * a string stays. A block that held nothing but its docstring gets a `pass`. */

interface LogicalLine {
  indent: string;
  text: string;
  onlyString: boolean;
}

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
  let depth = 0;
  let strings = 0;
  let other = false;

  const finish = (): void => {
    const trimmed = text.trimEnd();
    if (trimmed !== "") {
      lines.push({ indent: indent ?? "", text: trimmed, onlyString: strings > 0 && !other });
    }
    text = "";
    indent = null;
    strings = 0;
    other = false;
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
      text += source.slice(position, end);
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
      if (depth > 0) {
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
    if ("([{".includes(character)) depth += 1;
    if (")]}".includes(character)) depth -= 1;
    if (!/\s/.test(character)) other = true;
    text += character;
    position += 1;
  }
  finish();
  return lines;
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
