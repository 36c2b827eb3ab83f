import { lazy, Suspense } from "react";

const LookView = lazy(() => import("./LookView.tsx"));

/** The tray in 3D. What draws it is fetched when it is first opened. */
export function Look() {
  return (
    <Suspense fallback={<p className="empty">The tray in 3D is being made ready.</p>}>
      <LookView />
    </Suspense>
  );
}
