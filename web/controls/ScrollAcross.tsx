import { type ReactNode, type RefObject, useLayoutEffect, useRef, useState } from "react";

interface ScrollAcrossProps {
  /** What is inside, for those who hear the page. */
  readonly label: string;
  readonly testId?: string;
  readonly children: ReactNode;
}

/**
 * Room for a table that may be wider than the screen: it scrolls inside itself, also by the arrow keys, and the page
 * stays where it is. Where all of it fits, Tab passes it by.
 */
export function ScrollAcross({ label, testId, children }: ScrollAcrossProps) {
  const room = useRef<HTMLElement>(null);
  const isWider = useIsWider(room);
  return (
    <section
      ref={room}
      className="scroll-x"
      aria-label={label}
      tabIndex={isWider ? 0 : undefined}
      data-testid={testId}
    >
      {children}
    </section>
  );
}

/** Whether the contents are wider than the room, as both change. */
function useIsWider(room: RefObject<HTMLElement | null>): boolean {
  const [isWider, setIsWider] = useState(false);
  useLayoutEffect(() => {
    const element = room.current;
    if (!element) return;
    const measure = () => setIsWider(element.scrollWidth > element.clientWidth);
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    for (const child of element.children) observer.observe(child);
    measure();
    return () => observer.disconnect();
  });
  return isWider;
}
