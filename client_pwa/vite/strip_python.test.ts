import { describe, expect, it } from "vitest";
import { stripPython } from "./strip_python";

describe("stripPython", () => {
  it("drops comments and docstrings, keeps strings that only look like them", () => {
    const source = `"""Module."""\n\nimport math  # why\n\nNOTE = "# not a comment"\n\ndef f(x):\n    """Doc\n    # inside."""\n    return '''a\n# b''' + x\n`;
    expect(stripPython(source)).toBe(`import math\nNOTE="# not a comment"\ndef f(x):\n return '''a\n# b'''+x\n`);
  });
  it("gives an empty block a pass", () => {
    expect(stripPython('class A(Exception):\n    """Only words."""\n\nB = 1\n')).toBe("class A(Exception):\n pass\nB=1\n");
  });
  it("joins lines within brackets and keeps words apart", () => {
    expect(stripPython("x = (\n    a if b\n    else c,\n)\n")).toBe("x=(a if b else c,)\n");
  });
  it("keeps a deeper block under the right head", () => {
    expect(stripPython("if a:\n    if b:\n        c()\n    d()\ne()\n")).toBe("if a:\n if b:\n  c()\n d()\ne()\n");
  });
  it("refuses a string that is never closed", () => {
    expect(() => stripPython('x = "abc')).toThrow("not closed");
  });
});
