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
    if (!element) return;
    // Once the key that led to it has been dealt with, lest that key press the dialog's first button.
    const stopWaiting = onceKeyIsOver(element, () => {
      if (!element.open) element.showModal();
      element.querySelector<HTMLElement>("[data-first]")?.focus();
    });
    return () => {
      stopWaiting();
      element.close();
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

/** Shows a dialog a turn later, or at the next key: that one is already the dialog's, not the page's behind it. */
function onceKeyIsOver(element: HTMLDialogElement, show: () => void): () => void {
  const stop = () => {
    clearTimeout(timer);
    window.removeEventListener("keydown", onNextKey, true);
  };
  const showNow = () => {
    stop();
    show();
  };
  const onNextKey = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.repeat) return;
    showNow();
    if (event.key !== "Escape") return;
    event.preventDefault();
    element.dispatchEvent(new Event("cancel", { cancelable: true }));
  };
  const timer = setTimeout(showNow);
  window.addEventListener("keydown", onNextKey, true);
  return stop;
}
