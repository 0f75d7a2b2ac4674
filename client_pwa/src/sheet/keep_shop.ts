/** Keeps a change of the shop, with the way back where something was lost by it. */

import { setShop, shop } from "../book/shop";
import type { Shop } from "../book/shop";
import { said } from "../base/said";

let before = shop.peek();

export function keepShop(next: Shop, words?: string): void {
  before = shop.peek();
  const kept = setShop(next);
  if (!kept) said.value = { text: "This browser keeps nothing: your shop is gone when the page closes. Save it as a file." };
  else if (words !== undefined) sayWithUndo(words);
}

/** After something was taken out of the shop: says so, with the way back beside it. */
export function sayGoneFromShop(what: string): void {
  sayWithUndo(`${what} is taken out.`);
}

function sayWithUndo(text: string): void {
  const former = before;
  said.value = {
    text,
    action: {
      label: "Undo",
      run: () => {
        setShop(former);
        said.value = { text: "Your shop is as it was." };
      },
    },
  };
}
