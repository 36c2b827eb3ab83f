import { useCallback, useEffect, useRef, useState } from "react";
import { useMedia } from "../controls/index.ts";
import { between, type Camera } from "./camera.ts";

/** A glide to another view takes so long, ms: it shows where things went. */
const GLIDE_MS = 160;

/**
 * The camera, and its two ways to change: at once, or by a short glide where motion is welcome. It starts at home, and
 * again when there is something to see and when the picture takes another shape, until the builder looks round.
 */
export function useCamera(home: () => Camera, hasParts: boolean, aspect: number) {
  const [camera, setCamera] = useState(home);
  const isTouched = useRef(false);
  const now = useRef(camera);
  now.current = camera;
  const frame = useRef(0);
  const isStill = useMedia("(prefers-reduced-motion: reduce)");
  // biome-ignore lint/correctness/useExhaustiveDependencies: the camera goes home when these change, not when `home` is new.
  useEffect(() => {
    if (!isTouched.current) setCamera(home());
  }, [hasParts, aspect]);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);

  const look = useCallback((next: Camera) => {
    cancelAnimationFrame(frame.current);
    isTouched.current = true;
    now.current = next;
    setCamera(next);
  }, []);
  const glide = useCallback(
    (to: Camera) => {
      cancelAnimationFrame(frame.current);
      isTouched.current = true;
      if (isStill) return setCamera(to);
      const from = now.current;
      const startedMs = performance.now();
      const step = () => {
        const share = Math.min(1, (performance.now() - startedMs) / GLIDE_MS);
        setCamera(share === 1 ? to : between(from, to, 1 - (1 - share) ** 2));
        if (share < 1) frame.current = requestAnimationFrame(step);
      };
      step();
    },
    [isStill],
  );
  return { camera, look, glide };
}
