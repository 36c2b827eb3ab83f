/**
 * In the page of the demo: puts a still copy of the page in its place, in which nothing happens at a move of the pointer
 * but that one line is drawn on one canvas, a worker is asked and answers at once, and one line of the shelf is changed.
 * Whatever the program computes and draws comes on top of what this takes.
 */
export function freezePage(): void {
  const still = document.body.cloneNode(true) as HTMLElement;
  const pictures = [...document.querySelectorAll("canvas")];
  const canvases = [...still.querySelectorAll("canvas")];
  canvases.forEach((canvas, at) => {
    const picture = pictures[at];
    if (picture) canvas.getContext("2d")?.drawImage(picture, 0, 0);
  });
  document.body.replaceWith(still);
  const hand = canvases.at(-1);
  const pen = hand?.getContext("2d");
  const part = still.querySelector("[data-testid=shelf-part] svg path");
  const outline = part?.getAttribute("d") ?? "";
  const echo = "onmessage = ({ data }) => postMessage(data)";
  const worker = new Worker(URL.createObjectURL(new Blob([echo], { type: "text/javascript" })));
  worker.onmessage = ({ data }) => part?.setAttribute("d", `${outline}M0 0L${data} 0`);
  addEventListener("pointermove", ({ clientX }) =>
    requestAnimationFrame(() => {
      if (!hand || !pen) return;
      pen.clearRect(0, 0, hand.width, hand.height);
      pen.beginPath();
      pen.moveTo(clientX, 0);
      pen.lineTo(clientX, hand.height);
      pen.stroke();
      worker.postMessage(clientX);
    }),
  );
}
