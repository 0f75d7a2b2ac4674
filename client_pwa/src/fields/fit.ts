/** No figure is ever cut: where a number is wider than its box its letters get smaller until all of it shows. */

const seen = new WeakSet<HTMLInputElement>();

const watcher = new ResizeObserver((entries) => {
  for (const { target } of entries) fit(target as HTMLInputElement);
});

export function fit(box: HTMLInputElement): void {
  if (!seen.has(box)) {
    seen.add(box);
    watcher.observe(box);
  }
  box.style.fontSize = "";
  if (box.value === "") return;
  const style = getComputedStyle(box);
  const sides = parseFloat(style.paddingLeft) + parseFloat(style.paddingRight);
  const size = parseFloat(style.fontSize);
  const room = box.clientWidth - sides;
  // A hair to spare: letters are not of one width at every size.
  for (let wide = box.scrollWidth - sides, now = size; box.scrollWidth > box.clientWidth && now > 6 && room > 0; wide = box.scrollWidth - sides) {
    now = Math.floor(Math.min(now - 0.5, (now * room) / wide) * 2) / 2;
    box.style.fontSize = `${now}px`;
  }
}
