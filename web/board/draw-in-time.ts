import { Layer } from "konva/lib/Layer";

const waiting = new Set<Layer>();

/**
 * Layers that were changed are drawn as soon as the page has settled, in the frame in which the pointer moved. By
 * itself the canvas library waits for the frame after it, and the drawn line would trail the hand by that frame.
 */
export function drawInTime(): void {
  Layer.prototype.batchDraw = function later(this: Layer) {
    if (waiting.size === 0) queueMicrotask(drawWaiting);
    waiting.add(this);
    return this;
  };
}

function drawWaiting(): void {
  const layers = [...waiting];
  waiting.clear();
  for (const layer of layers) if (layer.getStage()) layer.draw();
}
