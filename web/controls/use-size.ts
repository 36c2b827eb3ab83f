import { type RefObject, useLayoutEffect, useRef, useState } from "react";

/** The size of an element's inside in CSS pixels, as it is now; zero before it is laid out. */
export function useSize<Element extends HTMLElement>(): {
  readonly ref: RefObject<Element | null>;
  readonly widthPx: number;
  readonly heightPx: number;
} {
  const ref = useRef<Element>(null);
  const [size, setSize] = useState({ widthPx: 0, heightPx: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => setSize({ widthPx: element.clientWidth, heightPx: element.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, ...size };
}
