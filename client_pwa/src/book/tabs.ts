/** Tells the other open pages of this app on this device what was saved. */

export interface Notice {
  id: string;
  revision: number;
}

const CHANNEL = "ringwright-book";

const channel = typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel(CHANNEL);

export function tellOthers(notice: Notice): void {
  channel?.postMessage(notice);
}

export function hearOthers(listener: (notice: Notice) => void): void {
  channel?.addEventListener("message", (event: MessageEvent<Notice>) => listener(event.data));
}
