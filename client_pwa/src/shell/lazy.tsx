/** A screen that comes in a file of its own, fetched when it is first wanted: what nobody needs for the first
 * figures must not hold them up. The service worker keeps it with the rest, so it is there without signal. */

import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";

export function lazy(name: keyof typeof import("./later_screens")): ComponentType {
  let View: ComponentType | undefined;
  return function Lazy() {
    const [, redraw] = useState(0);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      if (View) return;
      import("./later_screens").then(
        (loaded) => {
          View = loaded[name];
          redraw(1);
        },
        () => setFailed(true),
      );
    }, []);
    if (View) return <View />;
    return (
      <p class="status" role="status">
        {failed ? "This part of the app could not be read. Open it again where there is a signal." : "One moment…"}
      </p>
    );
  };
}
