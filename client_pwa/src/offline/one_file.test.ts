import { describe, expect, it } from "vitest";
import { laterOf, withLater } from "./one_file";

const SCRIPT = "const z=2,f=t=>t*z;function open(z){return import(`./later_screens-ab_1-2.js`).then(l=>z+l.Twice(4))}globalThis.opened=open;export{f as A,z as B};";
const LATER = 'import{A as e,B as t}from"./index-xy.js";const f=n=>e(n)*t;export{f as Twice};';

describe("the later screens within the page's script", () => {
  it("are found beside it", () => expect(laterOf(SCRIPT, "./assets/index-xy.js")).toBe("./assets/later_screens-ab_1-2.js"));
  it("take what it gives, whatever it is called where they are opened", async () => {
    const joined = withLater(SCRIPT, LATER);
    expect(joined).not.toMatch(/import\(|export\{/);
    // A name of the page hides behind one of the function here, as the minifier has it.
    // eslint-disable-next-line @typescript-eslint/no-implied-eval -- the joined script is what is tested
    const opened = new Function(`${joined};return open(100)`) as () => Promise<number>;
    expect(await opened()).toBe(116);
  });
  it("are refused in a form that is not known", () => expect(() => withLater(SCRIPT, "const a=1")).toThrow("not of the form"));
});
