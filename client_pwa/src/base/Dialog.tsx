/** A sheet that slides over the page: the browser's own dialog, so that focus and Escape are right. */

import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";

interface Props {
  open: boolean;
  title: string;
  onClose(): void;
  children: ComponentChildren;
}

export function Dialog({ open, title, onClose, children }: Props) {
  const element = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = element.current!;
    if (open && !dialog.open) dialog.showModal();
    if (!open && dialog.open) dialog.close();
  }, [open]);
  return (
    <dialog
      ref={element}
      aria-labelledby={id}
      onClose={onClose}
      onClick={(event) => {
        // A tap beside the sheet closes it.
        if (event.target === element.current) onClose();
      }}
    >
      <div class="dialog-inside">
        <div class="dialog-head">
          <h2 id={id}>{title}</h2>
          <button type="button" class="close" onClick={onClose} aria-label="Close">
            ✕
          </button>
        </div>
        {open && children}
      </div>
    </dialog>
  );
}
