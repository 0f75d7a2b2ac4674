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
  it("drops the comma behind the last of several, and keeps the one that makes a tuple", () => {
    const source = "f(\n    a,\n    b=(\n        1,\n    ),\n)\ng(a,)[b,]\nh = [a,]\nreturn (a,)\nfor i in (a,): pass\nk = (1, 2,)\nm = {a,}\n";
    expect(stripPython(source)).toBe("f(a,b=(1,))\ng(a)[b,]\nh=[a]\nreturn(a,)\nfor i in(a,):pass\nk=(1,2)\nm={a}\n");
  });
  it("writes strings that stand side by side as one, where that is the same", () => {
    expect(stripPython('x = (\n    "a, "\n    "b"\n    \'c\' "\\1" "2" "\\n" "3"\n)\ny("d" + "e", "f")\n')).toBe('x=("a, b" \'c\' "\\1" "2\\n3")\ny("d"+"e","f")\n');
  });
  it("refuses a string that is never closed", () => {
    expect(() => stripPython('x = "abc')).toThrow("not closed");
  });
});
