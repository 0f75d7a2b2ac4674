/** No figure is ever cut: where a number is wider than its box its letters get smaller until all of it shows. */

/** No usual face has wider digits, in its own size. */
const DIGIT = 0.65;
/** So many have room for certain: to measure is to lay the page out in the midst of a key's work. */
const certain = new WeakMap<Element, number>();
/** Its own size or that of the page's letters may be another. */
const forget = ({ target }: { target: EventTarget | null }): void => void certain.set(target as Element, 0);

const watcher = new ResizeObserver((entries) => {
  for (const entry of entries) {
    forget(entry);
    fit(entry.target as HTMLInputElement);
  }
});

export function fit(box: HTMLInputElement): void {
  const digits = certain.get(box);
  if (digits === undefined) {
    // Measured when the page has been laid out anyway, before it is painted.
    forget({ target: box });
    watcher.observe(box);
    box.addEventListener("focus", forget);
    return;
  }
  if (!box.style.fontSize && box.value.length <= digits && /^[\d., /]*$/.test(box.value)) return;
  box.style.fontSize = "";
  if (box.value === "") return;
  const style = getComputedStyle(box);
  const sides = parseFloat(style.paddingLeft) + parseFloat(style.paddingRight);
  const size = parseFloat(style.fontSize);
  const room = box.clientWidth - sides;
  certain.set(box, room / size / DIGIT);
  // A hair to spare: letters are not of one width at every size.
  for (let wide = box.scrollWidth - sides, now = size; box.scrollWidth > box.clientWidth && now > 6 && room > 0; wide = box.scrollWidth - sides) {
    now = Math.floor(Math.min(now - 0.5, (now * room) / wide) * 2) / 2;
    box.style.fontSize = `${now}px`;
  }
}
