/** Paper: the button that prints what is in view, and what must stand open meanwhile. */

export function PrintButton({ what }: { what: string }) {
  return (
    <button type="button" class="print-button" onClick={() => window.print()}>
      Print the {what}
    </button>
  );
}

/** What is folded on the screen stands open on paper; a drawing stays as the person left it. */
let unfolded: HTMLDetailsElement[] = [];

addEventListener("beforeprint", () => {
  unfolded = [...document.querySelectorAll<HTMLDetailsElement>("main details:not([open], .drawing, [data-asks])")];
  for (const each of unfolded) each.open = true;
});

addEventListener("afterprint", () => {
  for (const each of unfolded) each.open = false;
  unfolded = [];
});
