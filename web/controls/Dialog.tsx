import { X } from "lucide-react";
import { type ReactNode, useEffect, useId, useRef } from "react";

interface DialogProps {
  readonly title: string;
  readonly testId?: string;
  readonly children: ReactNode;
  /** What stands at the foot; a Close button if absent. */
  readonly foot?: ReactNode;
  readonly onClose: () => void;
}

/** A question or a list over the work; Escape and Close end it, and the work behind it is untouched. */
export function Dialog({ title, testId, children, foot, onClose }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const element = dialog.current;
    const show = () => {
      if (element && !element.open) element.showModal();
      element?.querySelector<HTMLElement>("[data-first]")?.focus();
    };
    // Once the key that led to it has been dealt with, lest that key press the dialog's first button.
    const timer = setTimeout(show);
    return () => {
      clearTimeout(timer);
      element?.close();
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      className="dialog"
      aria-labelledby={id}
      data-testid={testId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <header>
        <h2 id={id}>{title}</h2>
        <button type="button" className="plain" onClick={onClose}>
          <X aria-hidden />
          Close
        </button>
      </header>
      <div className="dialog-body">{children}</div>
      {foot ? <footer>{foot}</footer> : null}
    </dialog>
  );
}
